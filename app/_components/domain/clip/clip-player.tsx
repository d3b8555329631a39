'use client'

import { ClipBar, ClipKeys } from './clip-bar'
import { ClipFilm } from './clip-film'
import type { ClipMoment } from './clip-moment'
import { ClipReach } from './clip-reach'
import type { Lost } from './say-lost'
import { useClip } from './use-clip'
import { useClipKeys } from './use-clip-keys'

interface PlayerProps {
  readonly moment: ClipMoment
  readonly file: string
  readonly onLost: (lost: Lost) => void
  readonly plays: boolean
}

const wantsStillness = (): boolean => window.matchMedia('(prefers-reduced-motion: reduce)').matches

function Player({ moment, file, onLost, plays }: PlayerProps) {
  const clip = useClip(moment)
  const onKeyDown = useClipKeys(clip)
  const begin = () => (plays && !wantsStillness() ? clip.replay() : clip.toStart())
  return (
    <section className="clip" aria-label={`Film: ${moment.title}`} onKeyDown={onKeyDown}>
      <ClipFilm clip={clip} file={file} title={moment.title} onLost={onLost} begin={begin} />
      <ClipBar clip={clip} replays={plays} />
      <ClipKeys />
    </section>
  )
}

interface ClipPlayerProps {
  readonly moment: ClipMoment
  /** Plays as soon as it is there, unless the reader wants no movement, and is played anew by a button and its key. */
  readonly plays?: boolean
  /** Whether something rests on the film, or it only shows what is meant. */
  readonly isEvidence?: boolean
  /** Told when the film does not play. */
  readonly onLost?: (lost: Lost) => void
  /** Told when it is opened where it is. */
  readonly onAway?: () => void
}

/** A moment to look at. */
export function ClipPlayer({ moment, plays = false, isEvidence = true, onLost, onAway }: ClipPlayerProps) {
  return (
    <ClipReach moment={moment} keyed={plays} isEvidence={isEvidence} onLost={onLost} onAway={onAway}>
      {(file, lose) => <Player moment={moment} file={file} onLost={lose} plays={plays} />}
    </ClipReach>
  )
}
