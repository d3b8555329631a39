import type { Metadata } from 'next'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { LogRow, PageHead, Section } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { loadFrame } from '@/app/loader'
import { AskedList } from './_components/asked-list'
import { ForFamilies } from './_components/for-families'
import { SearchForm } from './_components/search-form'
import { SkillLine } from './_components/skill-line'
import { loadCurriculum } from './loader'
import { FamilyWays } from './tree/_components/family-ways'

export const metadata: Metadata = { title: 'Curriculum' }

export default async function CurriculumPage() {
  const frame = await loadFrame()
  const page = await loadCurriculum()
  return (
    <PageFrame frame={frame} current="/curriculum" signOut={signOutAction}>
      <PageHead sentence="What is asked, at each step and in each skill." margin={page.title}>
        <p>
          Heights, ages and counts are this programme’s own rules; the facility’s and the governing body’s come first.
        </p>
        <FamilyWays families={page.families} />
        <SearchForm />
      </PageHead>
      <ForFamilies opening={page.opening} />
      {page.families.map((family) => (
        <Section key={family.family} title={family.label} aside={<a href={family.href}>The {family.label} tree</a>}>
          <LogRow>
            <ul className="grid gap-x-8 lg:grid-cols-2">
              {family.skills.map((skill) => (
                <SkillLine key={skill.key} skill={skill} />
              ))}
            </ul>
          </LogRow>
        </Section>
      ))}
      <Section title="Levels and board moves">
        {page.steps.map((step) => (
          <LogRow key={step.key} id={step.key} margin={step.title}>
            {step.summary ? <p className="measure">{step.summary}</p> : null}
            <AskedList asked={step.asks} />
          </LogRow>
        ))}
      </Section>
    </PageFrame>
  )
}
