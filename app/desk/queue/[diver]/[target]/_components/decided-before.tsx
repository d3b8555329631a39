import { LogRow, Section } from '@/app/_components/ui/sheet'
import type { DecisionPage } from '../loader'

/** Earlier decisions on the step, with their reasons and what they said of the questions that stood. */
export function DecidedBefore({ before }: Pick<DecisionPage, 'before'>) {
  if (before.length === 0) return null
  return (
    <Section title="Decided before">
      {before.map(({ id, sentence, reason, said }) => (
        <LogRow key={id}>
          <p>{sentence}</p>
          {reason ? <p className="text-soft">“{reason}”</p> : null}
          {said.map((line) => (
            <p key={line} className="measure text-13 text-soft">
              {line}
            </p>
          ))}
        </LogRow>
      ))}
    </Section>
  )
}
