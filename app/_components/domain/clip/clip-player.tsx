'use client'

import { type KeyboardEvent, useState } from 'react'
import { Notice } from '../../ui/notice'
import { saySeconds, saySpeed, speeds } from './frames'
import { type ClipControl, useClip } from './use-clip'

/** A moment as it is shown: the link with its range, the film itself when it can be played here, and where it comes from. */
export interface ClipMoment {
  /** Opens the film at the moment, wherever it is. */
  readonly href: string
  /** The file to play; null for a page about a film. */
  readonly file: string | null
  /** The host that gives it, or null for this server's own. */
  readonly host: string | null
  readonly start: number
  readonly end: number | null
  readonly range: string
  readonly title: string
}

type Keyed = ClipControl & { readonly slower: (by: 1 | -1) => void }

const keyActs = new Map<string, (clip: Keyed) => void>([
  [' ', (clip) => clip.toggle()],
  ['ArrowLeft', (clip) => clip.step(-1)],
  ['ArrowRight', (clip) => clip.step(1)],
  ['ArrowDown', (clip) => clip.slower(1)],
  ['ArrowUp', (clip) => clip.slower(-1)],
  ['Home', (clip) => clip.toStart()],
])

const notReachable = (host: string | null): string =>
  `Evidence not reachable: ${host ?? 'this server'} does not give the film now. The moment stays on the record with all that rests on it. Try again later, or ask whoever filmed it.`

function Player({ moment, file }: { moment: ClipMoment; file: string }) {
  const [lost, setLost] = useState(false)
  const clip = useClip(moment)
  const slower = (by: 1 | -1) => {
    const next = speeds[speeds.indexOf(clip.speed) + by]
    if (next !== undefined) clip.setSpeed(next)
  }
  const onKeyDown = (event: KeyboardEvent) => {
    const by = keyActs.get(event.key)
    const { target } = event
    const ownKeys = target instanceof HTMLSelectElement || (event.key === ' ' && target instanceof HTMLButtonElement)
    if (!by || ownKeys || event.altKey || event.ctrlKey || event.metaKey) return
    event.preventDefault()
    by({ ...clip, slower })
  }
  if (lost) return <Notice tone="warning">{notReachable(moment.host)}</Notice>
  return (
    <section className="clip" aria-label={`Film: ${moment.title}`} onKeyDown={onKeyDown}>
      <video
        ref={clip.video}
        className="clip-film"
        src={file}
        muted
        playsInline
        preload="auto"
        tabIndex={0}
        aria-label={moment.title}
        onLoadedData={clip.toStart}
        onEnded={clip.again}
        onError={() => setLost(true)}
      />
      <div className="clip-bar">
        <button type="button" className="button" onClick={clip.toggle}>
          {clip.playing ? 'Pause' : 'Play'}
        </button>
        <button type="button" className="button" onClick={() => clip.step(-1)}>
          Frame back
        </button>
        <button type="button" className="button" onClick={() => clip.step(1)}>
          Frame on
        </button>
        <label className="clip-speed">
          Speed
          <select value={clip.speed} onChange={(event) => clip.setSpeed(Number(event.target.value))}>
            {speeds.map((speed) => (
              <option key={speed} value={speed}>
                {saySpeed(speed)}
              </option>
            ))}
          </select>
        </label>
        <output className="clip-time" aria-live="off" data-media-time={clip.shown}>
          {saySeconds(clip.shown)}
        </output>
      </div>
      <p className="text-13 text-soft">
        Keys: space plays and pauses, left and right step by a frame, up and down change the speed, Home goes to the
        start.
      </p>
    </section>
  )
}

/**
 * A moment to look at. A film of this server is there at once; nothing is asked of anybody else's before it is wanted. What
 * is no film file opens where it is, with its range beside it.
 */
export function ClipPlayer({ moment }: { moment: ClipMoment }) {
  const [wanted, setWanted] = useState(moment.host === null)
  const { file, host, href, range } = moment
  return (
    <div className="clip-sheet">
      {file !== null && wanted ? <Player moment={moment} file={file} /> : null}
      {file !== null && !wanted ? (
        <p>
          <button type="button" className="button button-go" onClick={() => setWanted(true)}>
            Play it here, from {host}
          </button>
        </p>
      ) : null}
      <p>
        <a href={href} rel="noreferrer noopener" target="_blank">
          Open {range} {host === null ? 'in a new window' : `at ${host}`}
        </a>
      </p>
    </div>
  )
}
