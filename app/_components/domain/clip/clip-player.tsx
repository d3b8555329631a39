'use client'

import { ClipBar, ClipKeys } from './clip-bar'
import { ClipFilm } from './clip-film'
import type { ClipMoment } from './clip-moment'
import { ClipReach } from './clip-reach'
import { useClip } from './use-clip'
import { useClipKeys } from './use-clip-keys'

interface PlayerProps {
  readonly moment: ClipMoment
  readonly file: string
  readonly onLost: () => void
}

function Player({ moment, file, onLost }: PlayerProps) {
  const clip = useClip(moment)
  const onKeyDown = useClipKeys(clip)
  return (
    <section className="clip" aria-label={`Film: ${moment.title}`} onKeyDown={onKeyDown}>
      <ClipFilm clip={clip} file={file} title={moment.title} onLost={onLost} />
      <ClipBar clip={clip} />
      <ClipKeys />
    </section>
  )
}

/** A moment to look at. */
export function ClipPlayer({ moment }: { moment: ClipMoment }) {
  return (
    <ClipReach moment={moment}>{(file, onLost) => <Player moment={moment} file={file} onLost={onLost} />}</ClipReach>
  )
}
