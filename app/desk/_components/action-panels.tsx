import { reviewAction } from '@/app/desk/queue/actions'
import { ActionPanel } from '../../_components/domain/action-panel/action-panel'
import { type Act, panelOf } from './panels'

/** What can be done about a line, a button each; nothing when there is nothing to do. */
export function ActionPanels({ id, acts, back }: { id: string; acts: readonly Act[]; back: string }) {
  if (acts.length === 0) return null
  return (
    <div className="flex flex-wrap items-start gap-3 pt-2">
      {acts.map((act) => (
        <ActionPanel
          key={act.act}
          id={`${id}-${act.act}`}
          action={reviewAction}
          panel={panelOf(act, back)}
          place="line"
        />
      ))}
    </div>
  )
}
