import { ActionPanel, type PanelAction } from '@/app/_components/domain/action-panel/action-panel'
import { LogRow } from '@/app/_components/ui/sheet'
import { dropAction, linkAction } from '../actions'
import type { WaitingRow } from '../loader'

const linkPanel = (attempt: string): PanelAction => ({
  shortcut: 'l',
  label: 'Link its clip…',
  send: 'Link it',
  refused: 'Nothing was linked',
  tone: 'plain',
  sends: { attempt },
  asks: [
    {
      kind: 'line',
      name: 'link',
      label: 'Link of the clip',
      hint: 'With #t=12,15 at its end it fills the times by itself.',
    },
    { kind: 'line', name: 'start', label: 'From', hint: 'Seconds, or minutes and seconds: 12.4 or 1:02.5.' },
    { kind: 'line', name: 'end', label: 'To', hint: 'Left empty: to its end.' },
  ],
})

const dropPanel = (attempt: string): PanelAction => ({
  shortcut: 'n',
  label: 'Not filmed…',
  send: 'It was not filmed after all',
  refused: 'Nothing was changed',
  tone: 'stop',
  note: 'It goes off this list for good. The rating stays as it is.',
  sends: { attempt },
  asks: [],
})

/** What waits of one session: when, who, what, and which clip; each can be linked or taken off. */
export function WaitingList({ rows }: { rows: readonly WaitingRow[] }) {
  return (
    <ul>
      {rows.map(({ attempt, time, who, href, name, clip, ago, video }) => (
        <LogRow key={attempt} as="li" margin={time}>
          <p>
            <a href={href} className="text-18 font-bold">
              {who}
            </a>{' '}
            {name}{' '}
            <span className="text-soft">
              · clip {clip} · {ago}
            </span>
          </p>
          {video ? null : (
            <p className="measure text-soft">
              No consent to video is in force: it cannot be linked. The head coach records one on the diver’s page.
            </p>
          )}
          <div className="flex flex-wrap items-start gap-3 pt-2">
            {video ? (
              <ActionPanel id={`link-${attempt}`} action={linkAction} panel={linkPanel(attempt)} place="line" />
            ) : null}
            <ActionPanel id={`drop-${attempt}`} action={dropAction} panel={dropPanel(attempt)} place="line" />
          </div>
        </LogRow>
      ))}
    </ul>
  )
}
