import type { Metadata } from 'next'
import { ArcLine } from '@/app/_components/domain/arc/arc'
import { Caution } from '@/app/_components/domain/caution/caution'
import { ArcLegend, StatusLegend } from '@/app/_components/domain/status/legend'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { Nothing, Notice } from '@/app/_components/ui/notice'
import { Beside, LogRow, PageHead, Section } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { FamilyWays } from '@/app/curriculum/tree/_components/family-ways'
import { loadFrame } from '@/app/loader'
import { DoubtList } from './_components/doubt-list'
import { SafetyNotes } from './_components/safety-notes'
import { PlaceSkills, SkillList } from './_components/skill-list'
import { TargetList } from './_components/target-list'
import { loadDiver } from './loader'

export const metadata: Metadata = { title: 'Diver' }

interface DiverPageProps {
  readonly params: Promise<{ diver: string }>
}

export default async function DiverPage({ params }: DiverPageProps) {
  const frame = await loadFrame()
  const page = await loadDiver((await params).diver)
  return (
    <PageFrame frame={frame} current="/desk/divers" signOut={signOutAction}>
      <PageHead sentence={page.headline} margin={page.level}>
        {page.name} · {page.where}
        {page.headed ? (
          <>
            {' · '}
            <a href={`/desk/divers/${page.id}/particulars`}>Particulars</a>
            {' · '}
            <a href={`/desk/divers/${page.id}/moving`}>Moving</a>
          </>
        ) : null}
        {page.safety ? (
          <>
            {' · '}
            <a href={page.safety.href}>Safety and consent</a>
          </>
        ) : null}
      </PageHead>
      {page.standDowns.map((text) => (
        <Beside key={text}>
          <Notice tone="warning">{text}</Notice>
        </Beside>
      ))}
      {page.safety ? <SafetyNotes warnings={page.safety.warnings} notes={page.safety.notes} /> : null}
      {page.toSign.length > 0 ? (
        <Section title="To sign" aside="The standard is reached; a coach’s signature is wanted.">
          <LogRow>
            <SkillList skills={page.toSign} />
          </LogRow>
        </Section>
      ) : null}
      {page.doubts.length > 0 ? (
        <Section title="In doubt" aside="Shown again, it stands again, and what rests on it.">
          <DoubtList doubts={page.doubts} />
        </Section>
      ) : null}
      <Section title="Work on now">
        {page.focus.length === 0 ? (
          <Beside>
            <Nothing>Nothing stands out: rate a few called attempts, and what binds most will be named here.</Nothing>
          </Beside>
        ) : (
          page.focus.map((text) => (
            <LogRow key={text} margin="advice">
              <p className="measure">{text}</p>
            </LogRow>
          ))
        )}
      </Section>
      <Section title="Levels and board moves">
        <TargetList items={page.targets} said={page.headline} />
      </Section>
      <Section title="Last attempts" aside={<ArcLegend />}>
        {page.recent.length === 0 ? (
          <Beside>
            <Nothing>No attempt has been rated yet.</Nothing>
          </Beside>
        ) : null}
        {page.recent.map(({ day, attempts }) => (
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
        ))}
      </Section>
      <Section title="Skill trees" aside="What is held, to sign, open and closed, and by what.">
        <LogRow>
          <FamilyWays families={page.trees} />
        </LogRow>
      </Section>
      <Section title="Skills by place" aside={<StatusLegend />}>
        {page.places.map(({ place, label, skills }) => (
          <LogRow key={place} margin={label}>
            <PlaceSkills skills={skills} />
          </LogRow>
        ))}
      </Section>
      <Beside>
        <div className="pt-6">
          <Caution about="dive" />
        </div>
      </Beside>
    </PageFrame>
  )
}
