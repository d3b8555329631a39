import type { Metadata } from 'next'
import { ArcFigure } from '@/app/_components/domain/arc/arc-figure'
import { ArcLegend } from '@/app/_components/domain/status/legend'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { Fold } from '@/app/_components/ui/fold'
import { Nothing, Notice } from '@/app/_components/ui/notice'
import { Beside, LogRow, PageHead, Section } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { ActionPanels } from '@/app/desk/_components/action-panels'
import { CautionFoot } from '@/app/desk/_components/caution-foot'
import { doneWords } from '@/app/desk/_components/done-words'
import { Explained } from '@/app/desk/_components/explained'
import { loadFrame } from '@/app/loader'
import { ComparedAttempts } from './_components/compared-attempts'
import { GrantList } from './_components/grant-list'
import { SignForm } from './_components/sign-form'
import { signAction } from './actions'
import { loadPair, type PairPage } from './loader'

export const metadata: Metadata = { title: 'Skill' }

interface PairPageProps {
  readonly params: Promise<{ diver: string; pair: string }>
  readonly searchParams: Promise<{ done?: string | string[] }>
}

function Signature({ page }: { page: PairPage }) {
  const form = { action: signAction, diver: page.diver.id, pair: page.pair, levels: page.levels }
  if (!page.canSignNow && (!page.mayOverride || page.lines.length === 0)) return null
  return (
    <LogRow>
      {page.canSignNow && page.maySign ? (
        <SignForm {...form} override={false} />
      ) : page.canSignNow ? (
        <p>It is signed by the head coach.</p>
      ) : (
        <Fold summary="Sign by override">
          <SignForm {...form} override />
        </Fold>
      )}
    </LogRow>
  )
}

export default async function SkillOfDiverPage({ params, searchParams }: PairPageProps) {
  const { diver, pair } = await params
  const { done } = await searchParams
  const frame = await loadFrame()
  const page = await loadPair(diver, pair)
  const here = `/desk/divers/${page.diver.id}/${encodeURIComponent(page.pair)}`
  return (
    <PageFrame frame={frame} current="/desk/divers" signOut={signOutAction}>
      <PageHead sentence={page.asked} margin={page.state}>
        <a href={page.diver.href}>{page.diver.name}</a> · {page.name} · <a href={page.guide}>the guide</a>
      </PageHead>
      {typeof done === 'string' ? (
        <Beside>
          <Notice tone="kept">{doneWords[done] ?? 'Kept, and written in the ledger.'}</Notice>
        </Beside>
      ) : null}
      {page.because ? (
        <Beside>
          <Notice tone="note">{page.because}</Notice>
        </Beside>
      ) : null}
      <Section title="Signature">
        <Signature page={page} />
        {page.signed.map((one) => (
          <LogRow key={one.id} margin={one.state}>
            <p>{one.sentence}</p>
            {one.reason ? <p className="text-soft">“{one.reason}”</p> : null}
            {one.history.map((line) => (
              <p key={line} className="measure text-13 text-soft">
                {line}
              </p>
            ))}
            <ActionPanels id={one.id} acts={one.acts} back={here} />
          </LogRow>
        ))}
      </Section>
      {page.waiting.length > 0 ? (
        <Section title="Flagged and raised" aside="What waits for the head coach, and what was released.">
          {page.waiting.map((one) => (
            <LogRow key={one.id} margin={one.day}>
              <p>{one.sentence}</p>
              {one.reason ? <p className="text-soft">“{one.reason}”</p> : null}
              <ActionPanels id={one.id} acts={one.acts} back={here} />
            </LogRow>
          ))}
        </Section>
      ) : null}
      {page.looks ? <GrantList {...page.looks} back={here} /> : null}
      <Section title="Attempts" aside={<ArcLegend />}>
        <Beside>
          {page.lines.length === 0 ? (
            <Nothing>Nothing was rated yet: call attempts on the deck.</Nothing>
          ) : (
            <>
              <ArcFigure title={`${page.name}, the last attempts together`} {...page.arc} />
              <ComparedAttempts caption={`${page.name}, attempts by phase`} rows={page.lines} />
            </>
          )}
        </Beside>
      </Section>
      {page.prerequisite ? (
        <Section title="What it rests on">
          <Beside>
            <Explained node={page.prerequisite} />
          </Beside>
        </Section>
      ) : null}
      <CautionFoot about="dive" />
    </PageFrame>
  )
}
