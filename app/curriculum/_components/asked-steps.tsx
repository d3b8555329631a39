import { ExemplarList } from '@/app/_components/domain/clip/exemplar-list'
import { Fold } from '@/app/_components/ui/fold'
import { LogRow } from '@/app/_components/ui/sheet'
import type { CriterionView, GuideView, StepView } from '../[pair]/loader'
import { acrossLevels, gridOf, levelsOf } from './columns'

function Step({ step, chosen }: { step: StepView; chosen: number }) {
  const { from, until, when, asks, anchor, exemplars } = step
  const read = from <= chosen && chosen <= until
  return (
    <li className={`guide-step ${read ? '' : 'guide-other-level'}`} style={acrossLevels(from, until)}>
      <span className="guide-when">
        <b>{when}</b> · {asks}
      </span>
      {anchor}
      <ExemplarList exemplars={exemplars} />
    </li>
  )
}

function Criterion({ criterion, guide }: { criterion: CriterionView; guide: GuideView }) {
  const { key, title, statement, critical, steps, others, notYet, measured } = criterion
  return (
    <div id={key} className={`guide-item ${gridOf(guide)}`} style={levelsOf(guide)}>
      <div className="guide-stated">
        <h3 className="font-bold">
          {title}
          {critical ? <span className="guide-critical">critical</span> : null}
        </h3>
        <p className="text-13 text-soft">{statement}</p>
      </div>
      <ol className="guide-steps">
        {steps.map((step) => (
          <Step key={step.from} step={step} chosen={guide.chosen} />
        ))}
      </ol>
      {notYet ? <p className="guide-not-yet text-soft">{notYet}</p> : null}
      <div className="guide-others no-print">
        <Fold summary={<span className="text-13">The other ratings</span>}>
          <ul className="text-13">
            {others.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </Fold>
        {measured.length > 0 ? (
          <Fold summary={<span className="text-13">Measured on video</span>}>
            <ul className="text-13">
              {measured.map((text) => (
                <li key={text}>{text}</li>
              ))}
            </ul>
          </Fold>
        ) : null}
      </div>
    </div>
  )
}

/** What is asked, phases down and levels across; where there is little room, of one level at a time. */
export function AskedSteps({ guide }: { guide: GuideView }) {
  return (
    <div className="guide-asked">
      {guide.phases.map(({ phase, criteria }) => (
        <LogRow key={phase} margin={<span className="guide-phase">{phase}</span>}>
          {criteria.map((criterion) => (
            <Criterion key={criterion.key} criterion={criterion} guide={guide} />
          ))}
        </LogRow>
      ))}
    </div>
  )
}
