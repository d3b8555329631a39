'use client'

import type { TakenKind, UprightKind } from '@/lib/assessment/measure/taken'
import { needsUpright, takenKinds, uprights } from '@/lib/assessment/measure/taken'
import { takenName, uprightName } from '@/lib/assessment/measure/wording-taken'
import { Field, SelectField } from '../../../ui/field'
import type { Measuring } from './use-measuring'

const pixels = [1, 2, 4, 8] as const

/** What to measure, and how the picture is read. */
export function MeasureChoices({ measuring, hasBoard }: { measuring: Measuring; hasBoard: boolean }) {
  const { draft, change } = measuring
  const { kind, upright, down, metres, pixel } = draft
  const isFlight = kind === 'flight'
  return (
    <div className="measure-choices">
      <SelectField
        label="Measure"
        name="measure-kind"
        value={kind}
        onChange={(event) => change({ kind: event.target.value as TakenKind })}
      >
        {takenKinds
          .filter((one) => hasBoard || (one !== 'flight' && one !== 'distance'))
          .map((one) => (
            <option key={one} value={one}>
              {takenName[one]}
            </option>
          ))}
      </SelectField>
      {!isFlight && needsUpright(kind) ? (
        <SelectField
          label="Upright by"
          name="measure-upright"
          value={upright}
          onChange={(event) => change({ upright: event.target.value as UprightKind })}
        >
          {uprights.map((one) => (
            <option key={one} value={one}>
              {uprightName[one]}
            </option>
          ))}
        </SelectField>
      ) : null}
      {kind === 'arms' ? (
        <SelectField
          label="From straight"
          name="measure-down"
          value={down ? 'down' : 'up'}
          onChange={(event) => change({ down: event.target.value === 'down' })}
        >
          <option value="up">up</option>
          <option value="down">down, at the entry</option>
        </SelectField>
      ) : null}
      {kind === 'distance' ? (
        <Field
          label="Known length, in metres"
          name="measure-metres"
          inputMode="decimal"
          value={metres}
          onChange={(event) => change({ metres: event.target.value })}
        />
      ) : null}
      {isFlight ? null : (
        <SelectField
          label="A point is good to"
          name="measure-pixel"
          value={String(pixel)}
          onChange={(event) => change({ pixel: Number(event.target.value) })}
        >
          {pixels.map((one) => (
            <option key={one} value={one}>
              ±{one} {one === 1 ? 'pixel' : 'pixels'}
            </option>
          ))}
        </SelectField>
      )}
    </div>
  )
}
