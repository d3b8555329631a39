'use client'

import type { Side, Timing } from './duo-time'
import type { Span } from './time-map'
import type { CommonMark, FilmMark } from './timing'

interface DuoRuleProps {
  readonly timing: Timing
  readonly whole: Span
  readonly time: number
  readonly marks: Readonly<Record<Side, readonly FilmMark[]>>
  readonly common: readonly CommonMark[]
  readonly spans: Readonly<Record<Side, Span>>
}

const wide = 1000
const lines = { first: 14, second: 46 } as const

/** Two rules of time, one above the other: a hairline between the same mark in both hangs straight where they come together. */
export function DuoRule({ timing, whole, time, marks, common, spans }: DuoRuleProps) {
  const length = whole.end - whole.start
  if (!(length > 0)) return null
  const x = (first: number) => (wide * (first - whole.start)) / length
  const onRule = (side: Side, at: number) => x(side === 'first' ? at : timing.map.toFirst(at))
  return (
    <svg className="duo-rule" viewBox={`0 0 ${wide} 60`} preserveAspectRatio="none" aria-hidden="true">
      {common.map(({ key, first, second }) => (
        <path
          key={key}
          className="duo-hair"
          d={`M ${onRule('first', first)} ${lines.first} L ${onRule('second', second)} ${lines.second}`}
        />
      ))}
      {(['first', 'second'] as const).map((side) => (
        <g key={side}>
          <path
            className="duo-line"
            d={`M ${onRule(side, spans[side].start)} ${lines[side]} H ${onRule(side, spans[side].end)}`}
          />
          {marks[side].map(({ key, time: at }) => (
            <path key={key} className="duo-tick" d={`M ${onRule(side, at)} ${lines[side] - 6} v 12`} />
          ))}
        </g>
      ))}
      <path className="duo-now" d={`M ${x(time)} 2 V 58`} />
    </svg>
  )
}
