'use client'

import { sayTime } from '@/lib/assessment/mark/wording'
import { Field } from '../../../ui/field'
import type { MarksView } from '../marks/marks-view'
import type { FlightDraft } from './use-flight'

const used = ['flight', 'highest point', 'entry'] as const

/** A flight: the marks that it lies between, and the drop that no film shows. */
export function FlightFields({ marks, flight }: { marks: MarksView; flight: FlightDraft }) {
  return (
    <div className="grid gap-3">
      <dl className="flight-marks">
        {used.map((key) => {
          const mark = marks.own.find((one) => one.key === key)
          return (
            <div key={key}>
              <dt>{key}</dt>
              <dd>
                {mark ? sayTime(mark.atMs) : key === 'highest point' ? 'not marked, not needed' : 'not marked yet'}
              </dd>
            </div>
          )
        })}
      </dl>
      <p className="text-13 text-soft">
        How far the hips come down from the board left to the water met: the board’s height, when they are as high over
        the one as over the other. No film shows it.
      </p>
      <div className="grid grid-cols-2 gap-3">
        <Field
          label="Drop, in metres"
          name="flight-drop"
          inputMode="decimal"
          value={flight.drop}
          onChange={(event) => flight.setDrop(event.target.value)}
        />
        <Field
          label="Give or take"
          name="flight-give"
          inputMode="decimal"
          value={flight.give}
          onChange={(event) => flight.setGive(event.target.value)}
        />
      </div>
    </div>
  )
}
