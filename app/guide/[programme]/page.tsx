import type { Metadata } from 'next'
import { Caution } from '@/app/_components/domain/caution/caution'
import { Beside, LogRow, PageHead, Section } from '@/app/_components/ui/sheet'
import { SkillLine } from '@/app/curriculum/_components/skill-line'
import { OpenFrame } from '../_components/open-frame'
import { loadGuideList, loadOpenProgramme, robotsOf } from './loader'

interface GuideListProps {
  readonly params: Promise<{ programme: string }>
}

export async function generateMetadata({ params }: GuideListProps): Promise<Metadata> {
  const open = await loadOpenProgramme((await params).programme)
  return { title: `Guides of ${open.name}`, robots: robotsOf(open) }
}

export default async function GuideListPage({ params }: GuideListProps) {
  const list = await loadGuideList((await params).programme)
  return (
    <OpenFrame programme={list.programme}>
      <PageHead sentence="What good looks like, dive by dive." margin={list.name}>
        <p>{list.title}. Each guide says what is asked at each level, what goes wrong and what mends it.</p>
      </PageHead>
      <Beside>
        <Caution about="guide" />
      </Beside>
      {list.families.map(({ family, label, skills }) => (
        <Section key={family} title={label}>
          <LogRow>
            <ul className="grid gap-x-8 lg:grid-cols-2">
              {skills.map((skill) => (
                <SkillLine key={skill.key} skill={skill} />
              ))}
            </ul>
          </LogRow>
        </Section>
      ))}
    </OpenFrame>
  )
}
