import { ActionPanel, type PanelAction } from '@/app/_components/domain/action-panel/action-panel'
import { LogRow, Section } from '@/app/_components/ui/sheet'
import { openGuidesAction } from '../actions'
import type { CurriculumPage } from '../loader'

const panelFor = (open: boolean): PanelAction => ({
  shortcut: 'o',
  label: open ? 'Close…' : 'Open…',
  send: open ? 'Close the guides to families' : 'Open the guides to families',
  refused: 'Nothing was changed',
  tone: open ? 'stop' : 'go',
  note: open
    ? 'Their address is not found any more, from now on.'
    : 'Anybody who has the address then reads the guides of the edition in force: no names, no divers, no films but those whose consent says everybody.',
  sends: { open: open ? 'no' : 'yes', ...(open ? { listed: 'no' } : {}) },
  asks: open
    ? []
    : [
        {
          kind: 'one',
          name: 'listed',
          legend: 'May search engines list them?',
          choices: [
            { value: 'no', label: 'No: only who has the address finds them' },
            { value: 'yes', label: 'Yes' },
          ],
        },
      ],
})

/** Whether families read the guides without signing in: their address for all, the switch for the lead. */
export function ForFamilies({ opening }: Pick<CurriculumPage, 'opening'>) {
  const { open, listed, said, href, lead } = opening
  if (!open && !lead) return null
  return (
    <Section title="For families">
      <LogRow margin={open ? 'open' : 'closed'}>
        <p className="measure pb-2">
          {open ? (
            <>
              Families read the guides without signing in at <a href={href}>this address</a>
              {listed ? '; search engines may list it.' : '; search engines are asked not to list it.'}
            </>
          ) : (
            'Only who signs in reads the guides.'
          )}{' '}
          <span className="text-soft">{said}</span>
        </p>
        {lead ? <ActionPanel id="guides" action={openGuidesAction} panel={panelFor(open)} place="line" /> : null}
      </LogRow>
    </Section>
  )
}
