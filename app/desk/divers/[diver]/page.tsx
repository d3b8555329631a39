import type { Metadata } from 'next'
import { ArcLegend, StatusLegend } from '@/app/_components/domain/status/legend'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { Nothing, Notice } from '@/app/_components/ui/notice'
import { Beside, LogRow, Section } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { FamilyWays } from '@/app/curriculum/tree/_components/family-ways'
import { CautionFoot } from '@/app/desk/_components/caution-foot'
import { loadFrame } from '@/app/loader'
import { DiverHead } from './_components/diver-head'
import { DoubtList } from './_components/doubt-list'
import { RecentAttempts } from './_components/recent-attempts'
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
      <DiverHead page={page} />
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
        <RecentAttempts days={page.recent} />
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
      <CautionFoot about="dive" />
    </PageFrame>
  )
}
