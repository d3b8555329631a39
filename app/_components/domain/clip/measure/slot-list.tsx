'use client'

import type { Point } from '@/lib/assessment/measure/picture'
import { slotName } from '@/lib/assessment/measure/wording-taken'
import { askedBy } from '../points/draft'
import type { Measuring } from './use-measuring'

const nudges: readonly { readonly name: string; readonly sign: string; readonly by: Point }[] = [
  { name: 'left', sign: '←', by: { x: -1, y: 0 } },
  { name: 'up', sign: '↑', by: { x: 0, y: -1 } },
  { name: 'down', sign: '↓', by: { x: 0, y: 1 } },
  { name: 'right', sign: '→', by: { x: 1, y: 0 } },
]

/** The points to place: which one is next, which are there, and small moves for whoever has no keys. */
export function SlotList({ measuring }: { measuring: Measuring }) {
  const { draft, choose, nudge, atHand } = measuring
  const { chosen, points } = draft
  const at = atHand ? points[atHand] : undefined
  return (
    <div>
      <ul className="slot-list" aria-label="Points to place">
        {askedBy(draft).map(({ slot, optional }) => (
          <li key={slot}>
            <button
              type="button"
              className="slot"
              aria-pressed={slot === chosen}
              aria-label={`${slotName[slot]}, ${points[slot] ? 'placed' : optional ? 'if it can be seen' : 'to place'}`}
              onClick={() => choose(slot)}
            >
              <span aria-hidden="true">{points[slot] ? '●' : '○'}</span> {slotName[slot]}
            </button>
          </li>
        ))}
      </ul>
      <p className="slot-nudges">
        <span className="text-13 text-soft">
          {atHand && at ? `${slotName[atHand]} at ${at.x.toFixed(0)}, ${at.y.toFixed(0)}` : 'Tap or click the picture.'}
        </span>
        {atHand && at
          ? nudges.map(({ name, sign, by }) => (
              <button
                key={name}
                type="button"
                className="button"
                data-moves-on=""
                aria-label={`Move the ${slotName[atHand]} ${name} by a pixel`}
                onClick={() => nudge(atHand, { x: at.x + by.x, y: at.y + by.y })}
              >
                {sign}
              </button>
            ))
          : null}
      </p>
    </div>
  )
}
