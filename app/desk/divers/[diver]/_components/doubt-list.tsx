import { Fold } from '@/app/_components/ui/fold'
import { LogRow } from '@/app/_components/ui/sheet'
import type { DoubtView } from '../loader'
import { SkillList } from './skill-list'

/** What was signed and no longer stands, by what fell: put that right, and what rests on it comes back by itself. */
export function DoubtList({ doubts }: { doubts: readonly DoubtView[] }) {
  return (
    <ul>
      {doubts.map(({ key, word, href, name, says, resting }) => (
        <LogRow key={key} as="li" margin={word}>
          <p className="measure">
            <a href={href}>{name}</a>
            {says}
          </p>
          {resting.length > 0 ? (
            <Fold summary={resting.length === 1 ? 'One more rests on it' : `${resting.length} more rest on it`}>
              <SkillList skills={resting} />
            </Fold>
          ) : null}
        </LogRow>
      ))}
    </ul>
  )
}
