'use client'

import type { ReactNode } from 'react'
import { CheckField } from '../../ui/check-field'
import { Fold } from '../../ui/fold'
import { type CompareOptions, limits, type Pace, type Place } from './options'
import type { CommonMark } from './timing'

const paceNames: Record<Pace, string> = {
  clock: 'on one clock',
  flight: 'so that both fly equally long',
  phases: 'so that each phase takes as long',
}
const placeNames: Record<Place, string> = {
  tip: 'tip of the board on tip',
  hip: 'hips on hips',
  middle: 'middle of the picture on middle',
}

interface ChoicesProps {
  readonly options: CompareOptions
  readonly choose: (changes: Partial<CompareOptions>) => void
  /** Marks and measured frames that both have. */
  readonly together: readonly CommonMark[]
  readonly mark: CommonMark | null
  readonly paces: readonly Pace[]
  readonly places: readonly Place[]
  /** Milliseconds of one frame of the second film. */
  readonly frame: number
}

interface PickProps<Value extends string> {
  readonly label: string
  readonly value: Value
  readonly from: readonly (readonly [Value, string])[]
  readonly pick: (value: Value) => void
}

function Pick<Value extends string>({ label, value, from, pick }: PickProps<Value>) {
  const picked = (text: string) => {
    const found = from.find(([one]) => one === text)
    if (found) pick(found[0])
  }
  return (
    <label className="duo-pick">
      <span>{label}</span>
      <select className="control" value={value} onChange={(event) => picked(event.target.value)}>
        {from.map(([one, name]) => (
          <option key={one} value={one}>
            {name}
          </option>
        ))}
      </select>
    </label>
  )
}

function Press({ children, onPress }: { children: ReactNode; onPress: () => void }) {
  return (
    <button type="button" className="button" onClick={onPress} data-moves-on="">
      {children}
    </button>
  )
}

/** How both are laid beside or over each other in time and place. */
export function DuoChoices({ options, choose, together, mark, paces, places, frame }: ChoicesProps) {
  const over = options.view === 'over'
  const by = (key: 'x' | 'y' | 'size' | 'shift', amount: number) => () => {
    const [least, most] = limits[key]
    choose({ [key]: Math.min(most, Math.max(least, options[key] + amount)) })
  }
  const pace = paces.includes(options.pace) ? options.pace : 'clock'
  return (
    <div className="duo-choices">
      <Pick
        label="Show them"
        value={options.view}
        from={[
          ['beside', 'side by side'],
          ['over', 'one over the other'],
        ]}
        pick={(view) => choose({ view })}
      />
      <Pick
        label="Run them"
        value={pace}
        from={paces.map((one) => [one, paceNames[one]] as const)}
        pick={(next) => choose({ pace: next })}
      />
      {mark && pace === 'clock' ? (
        <Pick
          label="Together at"
          value={mark.key}
          from={together.map(({ key, label }) => [key, label] as const)}
          pick={(at) => choose({ at })}
        />
      ) : null}
      {over ? (
        <Pick
          label="Lay them"
          value={options.place}
          from={places.map((one) => [one, placeNames[one]] as const)}
          pick={(place) => choose({ place, x: 0, y: 0, size: 100 })}
        />
      ) : null}
      {over ? (
        <label className="duo-pick">
          <span>Second shows: {options.strength} %</span>
          <input
            type="range"
            min={0}
            max={100}
            step={5}
            value={options.strength}
            onChange={(event) => choose({ strength: Number(event.target.value) })}
          />
        </label>
      ) : null}
      <div className="duo-ticks">
        <CheckField
          label="Turn the second round, left for right"
          checked={options.mirrored}
          onChange={(event) => choose({ mirrored: event.target.checked })}
        />
        <CheckField
          label="Show the points placed on a frame"
          checked={options.points}
          onChange={(event) => choose({ points: event.target.checked })}
        />
      </div>
      <Fold summary="Move the second by hand">
        <div className="duo-hand">
          <Press onPress={by('shift', -frame)}>Earlier</Press>
          <Press onPress={by('shift', frame)}>Later</Press>
          {over ? (
            <>
              <Press onPress={by('x', -5)}>Left</Press>
              <Press onPress={by('x', 5)}>Right</Press>
              <Press onPress={by('y', -5)}>Up</Press>
              <Press onPress={by('y', 5)}>Down</Press>
              <Press onPress={by('size', -1)}>Smaller</Press>
              <Press onPress={by('size', 1)}>Larger</Press>
            </>
          ) : null}
          <Press onPress={() => choose({ x: 0, y: 0, size: 100, shift: 0 })}>Put it back</Press>
        </div>
        {options.shift === 0 ? null : (
          <p className="pt-2 text-13 text-soft">
            Moved by {Math.abs(options.shift)} ms {options.shift > 0 ? 'on' : 'back'}: the times below do not follow.
          </p>
        )}
      </Fold>
    </div>
  )
}
