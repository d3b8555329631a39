import { LogRow } from '@/app/_components/ui/sheet'

interface FaultRowProps {
  readonly fault: {
    readonly key: string
    readonly seen: string
    readonly causes: readonly string[]
    readonly corrections: readonly {
      readonly kind: string
      readonly text: string
      readonly drill: { readonly href: string; readonly name: string } | null
    }[]
  }
}

/** A fault: what is seen, why, and what mends it; a drill leads to its own page. */
export function FaultRow({ fault }: FaultRowProps) {
  return (
    <LogRow id={fault.key} margin="fault">
      <h3 className="font-bold">{fault.seen}</h3>
      <p className="measure text-soft">{fault.causes.join(' ')}</p>
      <ul className="measure">
        {fault.corrections.map(({ kind, text, drill }) => (
          <li key={text}>
            <span className="text-13 text-soft">{kind}: </span>
            {text} {drill ? <a href={drill.href}>{drill.name}</a> : null}
          </li>
        ))}
      </ul>
    </LogRow>
  )
}
