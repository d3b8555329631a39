'use client'

import { ClipBar, ClipKeys } from './clip-bar'
import { ClipFilm } from './clip-film'
import type { ClipMoment } from './clip-moment'
import { ClipReach } from './clip-reach'
import { MarksPanel } from './marks/marks-panel'
import type { MarkAction, MarksView } from './marks/marks-view'
import { useMarks } from './marks/use-marks'
import { useClip } from './use-clip'
import { useClipKeys } from './use-clip-keys'

interface ClipDeskProps {
  readonly moment: ClipMoment
  readonly marks: MarksView
  readonly markAction: MarkAction
}

type DeskProps = ClipDeskProps & { readonly file: string; readonly onLost: () => void }

function Desk({ moment, file, onLost, marks, markAction }: DeskProps) {
  const clip = useClip(moment)
  const marking = useMarks(clip, marks, markAction)
  const onKeyDown = useClipKeys(clip, marking.keys)
  return (
    <section className="clip clip-work" aria-label={`Film: ${moment.title}`} onKeyDown={onKeyDown}>
      <div>
        <ClipFilm clip={clip} file={file} title={moment.title} onLost={onLost} />
        <ClipBar clip={clip} />
        <ClipKeys />
      </div>
      <MarksPanel clip={clip} marks={marks} marking={marking} />
    </section>
  )
}

/** A moment to work on: the film, and where the phases of the dive begin in it. */
export function ClipDesk(props: ClipDeskProps) {
  return (
    <ClipReach moment={props.moment}>{(file, onLost) => <Desk {...props} file={file} onLost={onLost} />}</ClipReach>
  )
}
