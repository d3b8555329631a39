import type { Metadata } from 'next'
import { DiveNumber } from '@/app/_components/domain/dive/dive-number'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { LogRow, PageHead, Section } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { loadFrame } from '@/app/loader'
import { AskedList } from './_components/asked-list'
import { loadCurriculum } from './loader'

export const metadata: Metadata = { title: 'Curriculum' }

export default async function CurriculumPage() {
  const frame = await loadFrame()
  const page = await loadCurriculum()
  return (
    <PageFrame frame={frame} current="/curriculum" signOut={signOutAction}>
      <PageHead sentence="What is asked, at each step and in each skill." margin={page.title}>
        Heights, ages and counts are this programme’s own rules; the facility’s and the governing body’s come first.
      </PageHead>
      <Section title="Levels and board moves">
        {page.steps.map((step) => (
          <LogRow key={step.title} margin={step.title}>
            {step.summary ? <p className="measure">{step.summary}</p> : null}
            <AskedList asked={step.asks} />
          </LogRow>
        ))}
      </Section>
      <Section title="Skills by place">
        {page.places.map((place) => (
          <LogRow key={place.label} margin={place.label}>
            <ul className="grid gap-x-8 lg:grid-cols-2">
              {place.skills.map((skill) => (
                <li key={skill.href} className="py-0.5">
                  <a href={skill.href}>
                    {skill.dive ? <DiveNumber>{skill.dive}</DiveNumber> : null} {skill.title}
                  </a>{' '}
                  <span className="text-13 text-soft">{skill.level}</span>
                </li>
              ))}
            </ul>
          </LogRow>
        ))}
      </Section>
    </PageFrame>
  )
}
