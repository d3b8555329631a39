import { ArcLine } from '@/app/_components/domain/arc/arc'
import type { ArcSubject } from '@/app/_components/domain/arc/phase-view'
import { LogRow } from '@/app/_components/ui/sheet'

interface QueueItem {
  readonly href: string
  readonly diver: string
  readonly squads: string
  readonly step: string
  readonly since: string
  readonly arc: ArcSubject | null
  readonly shown: string
}

/** One line for each diver and step; the small arc shows the dive it rests on most. */
export function QueueList({ items, sinceWord }: { items: readonly QueueItem[]; sinceWord: string }) {
  return (
    <ul>
      {items.map((item) => (
        <LogRow key={item.href} as="li" margin={`${sinceWord} ${item.since}`}>
          <div className="flex items-center gap-5">
            <div className="w-24 shrink-0">
              {item.arc ? <ArcLine title={`${item.shown}, the last attempts`} {...item.arc} /> : null}
            </div>
            <div>
              <a href={item.href} className="text-18 font-bold">
                {item.diver}
              </a>
              <p>
                {item.step.charAt(0).toUpperCase() + item.step.slice(1)}
                {item.squads ? <span className="text-soft"> · {item.squads}</span> : null}
              </p>
            </div>
          </div>
        </LogRow>
      ))}
    </ul>
  )
}
