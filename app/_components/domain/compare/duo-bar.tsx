'use client'

import { saySpeed, speeds } from '../clip/frames'
import { sayFrom } from './say'
import type { CommonMark } from './timing'
import type { DuoControl } from './use-duo'

interface DuoBarProps {
  readonly duo: DuoControl
  readonly mark: CommonMark | null
  /** Where the first film's moment begins. */
  readonly start: number
}

/** One control for both films: where they are, play, step, and speed. */
export function DuoBar({ duo, mark, start }: DuoBarProps) {
  const { playing, time, whole, speed } = duo
  const said = sayFrom(mark?.label ?? 'start', time - (mark?.first ?? start))
  return (
    <div className="duo-bar">
      <input
        type="range"
        className="duo-scrub"
        data-scrub=""
        aria-label="Time of both films"
        aria-valuetext={said}
        min={whole.start}
        max={whole.end}
        step={0.001}
        value={time}
        onChange={(event) => duo.goTo(Number(event.target.value))}
      />
      <div className="duo-buttons">
        <button type="button" className="button button-go" onClick={duo.toggle}>
          {playing ? 'Pause' : 'Play'}
        </button>
        <button type="button" className="button" onClick={() => duo.step(-1)}>
          Frame back
        </button>
        <button type="button" className="button" onClick={() => duo.step(1)}>
          Frame on
        </button>
        <label className="clip-speed">
          <span className="duo-wide">Speed</span>
          <select aria-label="Speed" value={speed} onChange={(event) => duo.setSpeed(Number(event.target.value))}>
            {speeds.map((one) => (
              <option key={one} value={one}>
                {saySpeed(one)}
              </option>
            ))}
          </select>
        </label>
        <output className="clip-time" aria-live="off" data-duo-time={time}>
          {said}
        </output>
      </div>
    </div>
  )
}

/** The way to each mark that both have. */
export function DuoMarks({ duo, common }: { duo: Pick<DuoControl, 'goTo'>; common: readonly CommonMark[] }) {
  if (common.length === 0) return null
  return (
    <div className="duo-marks">
      <span className="text-soft">Go to</span>
      {common.map(({ key, label, first }) => (
        <button key={key} type="button" className="button" onClick={() => duo.goTo(first)}>
          {label}
        </button>
      ))}
    </div>
  )
}
