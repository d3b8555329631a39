import { ArcLine } from '@/app/_components/domain/arc/arc'
import { Nothing } from '@/app/_components/ui/notice'
import { Beside, LogRow } from '@/app/_components/ui/sheet'
import type { DiverPage } from '../loader'

/** The last attempts, a row a day, each drawn as a line of its phases. */
export function RecentAttempts({ days }: { days: DiverPage['recent'] }) {
  if (days.length === 0)
    return (
      <Beside>
        <Nothing>No attempt has been rated yet.</Nothing>
      </Beside>
    )
  return days.map(({ day, attempts }) => (
    <LogRow key={day} margin={day}>
      <ul className="grid gap-x-8 gap-y-3 lg:grid-cols-2">
        {attempts.map((attempt) => (
          <li key={attempt.id} className="flex items-center gap-5">
            <ArcLine title={`${attempt.name}, ${day}`} {...attempt.arc} />
            <span>{attempt.name}</span>
          </li>
        ))}
      </ul>
    </LogRow>
  ))
}
