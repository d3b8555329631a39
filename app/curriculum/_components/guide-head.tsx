import { ArcLine } from '@/app/_components/domain/arc/arc'
import { ArcFigure } from '@/app/_components/domain/arc/arc-figure'
import { Beside } from '@/app/_components/ui/sheet'
import type { GuideView, StageView } from '../[pair]/loader'
import { acrossLevels, gridOf, levelsOf } from './columns'

/** What the drawing shows, in words. */
export const sayDrawing = (name: string, turns: boolean): string =>
  `The notch is what is asked of each phase (${name}); a double line stands under the critical ones.${
    turns ? ' The small circle shows which way the body turns over.' : ''
  }`

/** The ways to each level that asks more than the one before; the address holds which is read. */
export function StageWays({ stages }: { stages: readonly StageView[] }) {
  return (
    <nav aria-label="Levels" className="no-print">
      <ul className="flex flex-wrap gap-x-5 gap-y-2">
        {stages.map(({ href, name, chosen }) => (
          <li key={href}>
            <a href={href} aria-current={chosen ? 'page' : undefined} className="family-way">
              {name}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  )
}

/** The dive drawn as the chosen level asks it, and in what that differs from the level before. */
export function ChosenStage({ guide }: { guide: GuideView }) {
  const stage = guide.stages[guide.chosen]
  if (!stage) return null
  return (
    <Beside>
      <StageWays stages={guide.stages} />
      <p className="measure pt-3 no-print">{guide.change}</p>
      <div className="guide-drawn">
        <ArcFigure
          {...stage.arc}
          title={`${guide.name}, as ${stage.name} asks it`}
          caption={sayDrawing(stage.name, stage.arc.turning !== null)}
        />
      </div>
    </Beside>
  )
}

/** Over the columns: each stage with what it asks of the phases, drawn small. */
export function StageColumns({ guide }: { guide: GuideView }) {
  return (
    <div className="log-head guide-columns">
      <div />
      <ol className={gridOf(guide)} style={levelsOf(guide)} aria-label="What each level asks of the phases">
        {guide.stages.map(({ name, arc, chosen }, index) => (
          <li key={name} className="guide-column" style={acrossLevels(index, index)}>
            <ArcLine {...arc} title={`${guide.name}, as ${name} asks it`} />
            <span className={chosen ? 'font-bold' : ''}>{name}</span>
          </li>
        ))}
      </ol>
    </div>
  )
}
