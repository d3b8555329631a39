import type { Metadata } from 'next'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { Fold } from '@/app/_components/ui/fold'
import { Nothing, Notice } from '@/app/_components/ui/notice'
import { Beside, LogRow, PageHead, Section } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { CautionFoot } from '@/app/desk/_components/caution-foot'
import { loadFrame } from '@/app/loader'
import { ConsentList } from './_components/consent-list'
import { GrowthList } from './_components/growth-list'
import { IncidentList, RecordForm } from './_components/incident-list'
import { StandDownForm, StandDownList } from './_components/stand-down-list'
import {
  clearIncidentAction,
  endStandDownAction,
  noteGrowthAction,
  recordConsentAction,
  recordIncidentAction,
  standDownAction,
} from './actions'
import { loadSafety } from './loader'

export const metadata: Metadata = { title: 'Safety and consent' }

const said: Readonly<Record<string, string>> = {
  recorded:
    'Recorded: it pauses at once. After a knock to the head: out of the water, the emergency plan, medical advice.',
  cleared: 'Cleared, and written in the ledger.',
  'stood-down': 'Stood down, at once and on every deck that hears of it. The reason is not in the ledger.',
  ended: 'Ended, and written in the ledger.',
  noted: 'Noted. The deck says so for ninety days.',
  consent: 'Recorded, and in force from now on.',
}

interface SafetyPageProps {
  readonly params: Promise<{ diver: string }>
  readonly searchParams: Promise<{ done?: string | string[]; clear?: string | string[] }>
}

export default async function DiverSafetyPage({ params, searchParams }: SafetyPageProps) {
  const frame = await loadFrame()
  const page = await loadSafety((await params).diver)
  const { done: doneWord, clear } = await searchParams
  const done = said[String(doneWord)]
  const { diver, today, head } = page
  return (
    <PageFrame frame={frame} current="/desk/divers" signOut={signOutAction}>
      <PageHead sentence={page.headline} margin="safety">
        <a href={diver.href}>{diver.name}</a> · safety and consent
      </PageHead>
      {done ? (
        <Beside>
          <Notice tone="kept">{done}</Notice>
        </Beside>
      ) : null}
      <Section title="Incidents" aside="Each pauses its skill and what rests on it until a head coach clears it.">
        <IncidentList
          incidents={page.incidents}
          clear={
            head ? { action: clearIncidentAction, diver: diver.id, at: typeof clear === 'string' ? clear : null } : null
          }
        />
        <LogRow>
          <Fold summary="Record an incident">
            <RecordForm
              action={recordIncidentAction}
              diver={diver.id}
              today={today}
              time={page.time}
              pairs={page.pairs}
            />
          </Fold>
        </LogRow>
      </Section>
      <Section title="Stand-downs" aside="No board move, no level and no signature while one is in force.">
        <StandDownList
          standDowns={page.standDowns}
          end={head ? { action: endStandDownAction, diver: diver.id, today } : null}
        />
        {head ? (
          <LogRow>
            <Fold summary={`Stand ${diver.given} down`}>
              <StandDownForm action={standDownAction} diver={diver.id} today={today} />
            </Fold>
          </LogRow>
        ) : null}
      </Section>
      <Section title="Coming back after a lay-off">
        {page.layOffs.map((text) => (
          <LogRow key={text}>
            <p className="measure">{text}</p>
          </LogRow>
        ))}
        {page.layOffs.length === 0 ? (
          <LogRow>
            <Nothing>Nothing is asked again: no place was left for long enough.</Nothing>
          </LogRow>
        ) : null}
      </Section>
      <Section title="Growth" aside="Changes nothing that is held.">
        <GrowthList
          given={diver.given}
          care={page.care}
          notes={page.growth}
          action={noteGrowthAction}
          diver={diver.id}
          today={today}
        />
      </Section>
      <Section title="Consent" aside="The latest counts. Withdrawing hides at once; nothing is deleted.">
        <ConsentList consents={page.consents} action={recordConsentAction} diver={diver.id} head={head} />
      </Section>
      <CautionFoot about="dive" />
    </PageFrame>
  )
}
