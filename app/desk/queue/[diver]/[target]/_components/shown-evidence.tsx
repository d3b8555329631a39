import { ArcFigure } from '@/app/_components/domain/arc/arc-figure'
import { Beside, Section } from '@/app/_components/ui/sheet'
import { AttemptTable } from '@/app/desk/_components/attempt-table'
import type { DecisionPage } from '../loader'

/** The last attempts at one skill of the evidence, drawn and as a table, with the ways to the other skills. */
export function ShownEvidence({ shown, pairs }: Pick<DecisionPage, 'shown' | 'pairs'>) {
  if (!shown) return null
  return (
    <Section title={shown.name} aside="the last attempts; the notch is what is asked">
      <Beside>
        <div className="decision-evidence">
          <ArcFigure title={`${shown.name}, the last attempts together`} {...shown.arc} />
          <AttemptTable caption={`${shown.name}, attempts by phase`} rows={shown.lines} />
        </div>
        <nav aria-label="Evidence by skill" className="flex flex-wrap gap-x-5 gap-y-1 pt-2 text-13">
          {pairs.map((one) => (
            <a key={one.key} href={one.href} aria-current={one.current ? 'true' : undefined}>
              {one.name}
            </a>
          ))}
        </nav>
      </Beside>
    </Section>
  )
}
