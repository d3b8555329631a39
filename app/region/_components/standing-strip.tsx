import type { ReactNode } from 'react'
import type { CountTable } from '../loader'

/** Each standing has a shape and a word; teal only for what can be done. */
const shapes: Readonly<Record<string, ReactNode>> = {
  ready: <circle cx="7" cy="7" r="5" className="strip-teal strip-full" />,
  near: (
    <>
      <circle cx="7" cy="7" r="5" className="strip-teal" />
      <path d="M7 2a5 5 0 0 0 0 10z" className="strip-teal strip-full" />
    </>
  ),
  'held up': (
    <>
      <circle cx="7" cy="7" r="5" />
      <path d="M1 7h12" />
    </>
  ),
  'on the way': <circle cx="7" cy="7" r="5" />,
  'stood down': <path d="M3 7h8" />,
  'has them all': <circle cx="7" cy="7" r="5" className="strip-full" />,
}

const Mark = ({ figure }: { figure: string }) => (
  <svg viewBox="0 0 14 14" width="14" height="14" className="strip-mark" aria-hidden="true">
    {shapes[figure]}
  </svg>
)

/** The table drawn, a mark for each diver, so that a few look like a few. The table below says the same in numbers. */
export function StandingStrip({ table: { columns, rows } }: { table: CountTable }) {
  const drawn = columns.map(({ label }, at) => ({ label, at })).filter(({ label }) => label in shapes)
  return (
    <div className="strip">
      <ul className="strip-legend text-13 text-soft" aria-label="A mark for each diver">
        {drawn.map(({ label }) => (
          <li key={label}>
            <Mark figure={label} /> {label}
          </li>
        ))}
      </ul>
      <div aria-hidden="true">
        {rows.map(({ labels, cells }) => (
          <div key={labels.join(' ')} className="strip-row">
            <span className="text-13 text-soft">{labels.join(', ')}</span>
            <span className="strip-marks">
              {drawn.flatMap(({ label, at }) =>
                Array.from({ length: cells[at]?.count ?? 0 }, (_, nth) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: marks of one standing are all alike
                  <Mark key={`${label} ${nth}`} figure={label} />
                )),
              )}
            </span>
          </div>
        ))}
      </div>
    </div>
  )
}
