'use client'

import { saySeconds, saySpeed, speeds } from './frames'
import type { ClipControl } from './use-clip'

/** Play, step, speed, and the time of the frame that is shown; `replays`: from the start of the range, by a key of the page too. */
export function ClipBar({ clip, replays = false }: { clip: ClipControl; replays?: boolean }) {
  return (
    <div className="clip-bar">
      <button type="button" className="button" onClick={clip.toggle}>
        {clip.playing ? 'Pause' : 'Play'}
      </button>
      {replays ? (
        <button type="button" className="button" onClick={clip.replay} data-shortcut="r">
          Replay
        </button>
      ) : null}
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
  )
}

/** The keys in words. */
export function ClipKeys({ more = '' }: { more?: string }) {
  return (
    <p className="clip-keys text-13 text-soft">
      Keys: space plays and pauses, left and right step by a frame, up and down change the speed, Home goes to the
      start.{more}
    </p>
  )
}
