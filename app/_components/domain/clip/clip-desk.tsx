'use client'

import { useState } from 'react'
import { ClipBar, ClipKeys } from './clip-bar'
import { ClipFilm } from './clip-film'
import type { ClipMoment } from './clip-moment'
import { ClipReach } from './clip-reach'
import { MarksPanel } from './marks/marks-panel'
import type { MarkAction, MarksView } from './marks/marks-view'
import { useMarks } from './marks/use-marks'
import { DraftOverlay, KeptOverlay } from './measure/measure-overlay'
import { MeasurePanel } from './measure/measure-panel'
import type { MeasureAction, MeasuresView, SavedMeasure, TakeBackAction } from './measure/measures-view'
import { useMeasuring } from './measure/use-measuring'
import { PointsBoard } from './points/points-board'
import type { Lost } from './say-lost'
import { useClip } from './use-clip'
import { useClipKeys } from './use-clip-keys'

interface ClipDeskProps {
  readonly moment: ClipMoment
  readonly marks: MarksView
  readonly measures: MeasuresView
  readonly markAction: MarkAction
  readonly measureAction: MeasureAction
  readonly takeBackAction: TakeBackAction
}

type DeskProps = ClipDeskProps & { readonly file: string; readonly onLost: (lost: Lost) => void }

const noKeys: ReadonlyMap<string, () => void> = new Map()

function Desk({ moment, file, onLost, marks, measures, ...actions }: DeskProps) {
  const [isMeasuring, setMeasuring] = useState(false)
  const [kept, setKept] = useState<SavedMeasure | null>(null)
  const clip = useClip(moment)
  const marking = useMarks(clip, marks, actions.markAction)
  const measuring = useMeasuring(clip)
  const onKeyDown = useClipKeys(clip, isMeasuring ? noKeys : marking.keys)
  const show = (measure: SavedMeasure | null) => {
    setKept(measure)
    const frame = measure && measure.taken.kind !== 'flight' ? measure.taken.frames[0] : null
    if (frame) clip.goTo(frame.atMs / 1000, frame.frameUs === null ? null : frame.frameUs / 1_000_000)
  }
  const { size } = clip
  const drawsOn = isMeasuring && measuring.draft.kind !== 'flight'
  return (
    <section className="clip clip-work" aria-label={`Film: ${moment.title}`} onKeyDown={onKeyDown}>
      <div className="clip-side">
        <ClipFilm clip={clip} file={file} title={moment.title} onLost={onLost}>
          {size && kept && kept.taken.kind !== 'flight' ? (
            <KeptOverlay taken={kept.taken} shownMs={Math.round(clip.shown * 1000)} />
          ) : null}
          {size && drawsOn ? <DraftOverlay measuring={measuring} size={size} /> : null}
          {size && drawsOn ? <PointsBoard clip={clip} size={size} measuring={measuring} /> : null}
        </ClipFilm>
        <ClipBar clip={clip} />
        <ClipKeys />
      </div>
      <div>
        <p className="clip-modes">
          <button type="button" aria-pressed={!isMeasuring} onClick={() => setMeasuring(false)}>
            Mark phases
          </button>
          <button type="button" aria-pressed={isMeasuring} onClick={() => setMeasuring(true)}>
            Measure{measures.saved.length > 0 ? ` · ${measures.saved.length} kept` : ''}
          </button>
        </p>
        {isMeasuring ? (
          <MeasurePanel
            measures={measures}
            marks={marks}
            measuring={measuring}
            measureAction={actions.measureAction}
            takeBackAction={actions.takeBackAction}
            shown={kept?.id ?? null}
            onShow={show}
          />
        ) : (
          <MarksPanel marks={marks} marking={marking} />
        )}
      </div>
    </section>
  )
}

/** A moment to work on: the film, where the phases of the dive begin in it, and what is measured on its frames. */
export function ClipDesk(props: ClipDeskProps) {
  return (
    <ClipReach moment={props.moment}>{(file, onLost) => <Desk {...props} file={file} onLost={onLost} />}</ClipReach>
  )
}
