import { Beside } from '@/app/_components/ui/sheet'

interface ClubChoiceProps {
  readonly choice: readonly { readonly href: string; readonly name: string; readonly current: boolean }[]
}

/** For whoever heads several clubs: the same page of the others. */
export function ClubChoice({ choice }: ClubChoiceProps) {
  if (choice.length < 2) return null
  return (
    <Beside>
      <nav aria-label="Club" className="flex flex-wrap gap-x-5 pb-3">
        {choice.map(({ href, name, current }) => (
          <a key={href} href={href} aria-current={current ? 'page' : undefined} className={current ? 'font-bold' : ''}>
            {name}
          </a>
        ))}
      </nav>
    </Beside>
  )
}
