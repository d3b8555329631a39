import type { Status } from '@/lib/assessment/readiness/finding'
import { BobMark } from '../arc/bob'
import { StatusDrop } from './status-drop'

const meaning: Readonly<Record<Status, string>> = {
  met: 'met',
  lapsed: 'lapsed or in doubt',
  unproven: 'not shown yet',
  unmet: 'falls short',
}

/** What the drops mean; one legend for the whole product. */
export function StatusLegend() {
  return (
    <ul className="legend">
      {(Object.keys(meaning) as Status[]).map((status) => (
        <li key={status}>
          <StatusDrop status={status} /> {meaning[status]}
        </li>
      ))}
    </ul>
  )
}

/** What the arc and its rule mean. */
export function ArcLegend() {
  return (
    <ul className="legend">
      <li>
        <BobMark kind="seen" /> seen
      </li>
      <li>
        <BobMark kind="imputed" /> as expected, not rated
      </li>
      <li>
        <BobMark kind="none" /> not watched
      </li>
      <li>
        <BobMark kind="short" /> critical, falls short
      </li>
      <li>
        <span aria-hidden="true" className="legend-notch" /> what is asked
      </li>
      <li>
        <span aria-hidden="true" className="legend-critical" /> critical phase
      </li>
    </ul>
  )
}
