import type { Metadata } from 'next'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { FormField, FormSelect, FormTextArea } from '@/app/_components/ui/action-fields'
import { ActionForm } from '@/app/_components/ui/action-form'
import { LogRow, PageHead } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { loadFrame } from '@/app/loader'
import { enterDiversAction } from './actions'
import { loadNewDivers } from './loader'

export const metadata: Metadata = { title: 'Enter divers' }

interface NewDiversPageProps {
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>
}

const hint =
  'Given name, family name, birth date. If you know them: twisting side, hurdle leg. Lines pasted from a spreadsheet will do.'

export default async function EnterDiversPage({ searchParams }: NewDiversPageProps) {
  const { club } = await searchParams
  const frame = await loadFrame()
  const page = await loadNewDivers(club)
  return (
    <PageFrame frame={frame} current="/desk/squads" signOut={signOutAction}>
      <PageHead sentence="Enter divers, one a line." margin={page.clubName}>
        For divers who are new to the programme. Whoever dives at another of its clubs comes by{' '}
        <a href="/desk/transfers">transfer</a>, and the record comes too.
      </PageHead>
      <LogRow>
        <ActionForm
          action={enterDiversAction}
          submit="Enter them"
          refused="Nobody was entered"
          className="max-w-2xl"
          hidden={{ club: page.club }}
        >
          <FormTextArea
            label="Divers"
            name="lines"
            hint={hint}
            rows={14}
            placeholder={'Given, Family, 2014-05-31\nGiven, Family, 2013-11-02, left, right'}
            spellCheck={false}
          />
          <div className="grid gap-4 sm:grid-cols-2">
            <FormSelect label="Squad" name="squad" defaultValue={page.squads[0]?.id ?? ''}>
              {page.squads.map(({ id, name }) => (
                <option key={id} value={id}>
                  {name}
                </option>
              ))}
              <option value="">none yet</option>
            </FormSelect>
            <FormField
              label="With the club since"
              name="since"
              type="date"
              hint="For all of these lines."
              defaultValue={page.today}
            />
          </div>
        </ActionForm>
      </LogRow>
    </PageFrame>
  )
}
