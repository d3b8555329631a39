import type { Metadata } from 'next'
import { Caution } from '@/app/_components/domain/caution/caution'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { FormTextArea } from '@/app/_components/ui/action-fields'
import { ActionForm } from '@/app/_components/ui/action-form'
import { Button } from '@/app/_components/ui/button'
import { SelectField } from '@/app/_components/ui/field'
import { Nothing, Notice } from '@/app/_components/ui/notice'
import { Beside, LogRow, PageHead } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { loadFrame } from '@/app/loader'
import { ClubChoice } from '../people/_components/club-choice'
import { RecogniseGrid } from './_components/recognise-grid'
import { recogniseAction } from './actions'
import { loadRecognise, type RecognisePage } from './loader'

export const metadata: Metadata = { title: 'Recognise' }

interface RecognisePageProps {
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>
}

function Select(props: {
  label: string
  name: string
  value: string
  options: readonly { readonly key: string; readonly label: string }[]
}) {
  return (
    <SelectField label={props.label} name={props.name} defaultValue={props.value}>
      {props.options.map(({ key, label }) => (
        <option key={key} value={key}>
          {label}
        </option>
      ))}
    </SelectField>
  )
}

function Shown({ page }: { page: RecognisePage }) {
  return (
    <form method="get" action="/desk/recognise" className="flex flex-wrap items-end gap-4 pb-2">
      <input type="hidden" name="club" value={page.club.club} />
      <Select label="Squad" name="squad" value={page.squad} options={page.squads} />
      <Select label="Family" name="family" value={page.family} options={page.families} />
      <Select label="As of level" name="level" value={page.level} options={page.levels} />
      <Button>Show</Button>
    </form>
  )
}

export default async function RecogniseSquadPage({ searchParams }: RecognisePageProps) {
  const query = await searchParams
  const frame = await loadFrame()
  const page = await loadRecognise(query)
  return (
    <PageFrame frame={frame} current="/desk/squads" signOut={signOutAction}>
      <PageHead sentence="What your divers held before anybody here rated them." margin="Recognise">
        Recognised skills open what rests on them for training. They advance nobody before they are shown here, and
        lapse after 120 days unless they are.
      </PageHead>
      <ClubChoice choice={page.choice} />
      {typeof query.done === 'string' && /^\d+$/.test(query.done) ? (
        <Beside>
          <Notice tone="kept">{query.done} recognised, each written in the ledger with your reason.</Notice>
        </Beside>
      ) : null}
      <LogRow>
        <Shown page={page} />
      </LogRow>
      {page.divers.length === 0 ? (
        <Beside>
          <Nothing>
            Nobody is in this squad yet: <a href={`/desk/squads?club=${page.club.club}`}>put divers in it first</a>.
          </Nothing>
        </Beside>
      ) : (
        <LogRow>
          <ActionForm
            action={recogniseAction}
            submit="Recognise what is ticked"
            refused="Nothing was recognised; your ticks are kept"
            hidden={{ club: page.club.club, squad: page.squad }}
          >
            <RecogniseGrid caption={`${page.family}, as of ${page.levelTitle}`} divers={page.divers} rows={page.rows} />
            <div className="max-w-xl">
              <FormTextArea
                label="On what it rests"
                name="reason"
                hint="One reason for all that is ticked: where and when it was shown, and to whom."
              />
            </div>
            <Caution about="move" />
          </ActionForm>
        </LogRow>
      )}
    </PageFrame>
  )
}
