import type { ReactNode } from 'react'
import { Caution } from '@/app/_components/domain/caution/caution'
import { Beside, LogRow, PageHead, Section } from '@/app/_components/ui/sheet'
import type { GuideView, Way } from '../[pair]/loader'
import { AskedList } from './asked-list'
import { AskedSteps } from './asked-steps'
import { FaultList } from './fault-list'
import { GuideFacts } from './guide-facts'
import { ChosenStage, StageColumns } from './guide-head'

/** Where the skill stands: what it rests on and opens, and how much is to be seen before it is signed. */
function InTheTree({ guide }: { guide: GuideView }) {
  return (
    <Section title="In the tree">
      <LogRow margin="rests on">
        {guide.restsOn ? <AskedList asked={guide.restsOn} /> : <p>Nothing comes before it.</p>}
      </LogRow>
      <LogRow margin="opens">
        {guide.opens.length === 0 ? <p>Nothing names it directly.</p> : null}
        <ul className="grid gap-x-8 lg:grid-cols-2">
          {guide.opens.map(({ href, name }) => (
            <li key={name} className="py-0.5">
              {href ? <a href={href}>{name}</a> : name}
            </li>
          ))}
        </ul>
      </LogRow>
      <LogRow margin="standard">
        <ul className="measure">
          {guide.standard.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      </LogRow>
    </Section>
  )
}

interface GuideSheetProps {
  readonly guide: GuideView
  /** Where else it is read. */
  readonly ways?: readonly Way[]
  /** What else stands in the head. */
  readonly children?: ReactNode
}

/** The guide of one dive, for coaches and for families: all that is read of it, and printed on two sheets. */
export function GuideSheet({ guide, ways, children }: GuideSheetProps) {
  return (
    <div className="guide-page">
      <PageHead sentence={guide.name} margin={guide.dive ?? 'lead-up'}>
        <GuideFacts guide={guide} ways={ways} />
        {children}
      </PageHead>
      <Beside>
        <Caution about="guide" />
      </Beside>
      <div className="guide">
        <Section
          title="What is asked"
          aside="The number is the rating asked, 0 to 4; the words are what is seen at it."
        >
          <ChosenStage guide={guide} />
          <StageColumns guide={guide} />
          <AskedSteps guide={guide} />
        </Section>
        <Section title="Faults and corrections">
          <FaultList phases={guide.phases} />
        </Section>
      </div>
      <div className="no-print">
        <InTheTree guide={guide} />
      </div>
    </div>
  )
}
