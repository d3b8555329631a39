import type { Metadata } from 'next'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { FormField, FormSelect } from '@/app/_components/ui/action-fields'
import { ActionForm } from '@/app/_components/ui/action-form'
import { LogRow, PageHead } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { loadFrame } from '@/app/loader'
import { mendAction } from './actions'
import { loadParticulars } from './loader'

export const metadata: Metadata = { title: 'Particulars' }

interface ParticularsPageProps {
  readonly params: Promise<{ diver: string }>
}

function SideSelect({ label, name, value }: { label: string; name: string; value: string | null }) {
  return (
    <FormSelect label={label} name={name} defaultValue={value ?? ''}>
      <option value="">not known yet</option>
      <option value="left">left</option>
      <option value="right">right</option>
    </FormSelect>
  )
}

export default async function ParticularsOfDiverPage({ params }: ParticularsPageProps) {
  const frame = await loadFrame()
  const page = await loadParticulars((await params).diver)
  return (
    <PageFrame frame={frame} current="/desk/divers" signOut={signOutAction}>
      <PageHead sentence={`Who ${page.name} is.`} margin="Particulars">
        <a href={`/desk/divers/${page.id}`}>{page.name}</a> · {page.clubName}
      </PageHead>
      <LogRow>
        <ActionForm action={mendAction} submit="Keep" className="max-w-2xl" hidden={{ id: page.id }}>
          <div className="grid gap-4 sm:grid-cols-2">
            <FormField label="Given name" name="givenName" defaultValue={page.givenName} />
            <FormField label="Family name" name="familyName" defaultValue={page.familyName} />
            <FormField
              label="Birth date"
              name="born"
              type="date"
              hint="Some levels ask an age; without it they wait."
              defaultValue={page.born}
            />
            <span />
            <SideSelect label="Twisting side" name="twistingSide" value={page.twistingSide} />
            <SideSelect label="Hurdle leg" name="hurdleLeg" value={page.hurdleLeg} />
          </div>
        </ActionForm>
      </LogRow>
    </PageFrame>
  )
}
