'use client'

import { type CSSProperties, useEffect, useMemo, useRef, useState } from 'react'
import { flushSync } from 'react-dom'
import type { Fit } from '@/lib/assessment/measure/fit'
import { Fold } from '../../ui/fold'
import { guessed } from '../clip/learn-frame'
import type { Lost } from '../clip/say-lost'
import type { ComparedFilm } from './compared-film'
import { duoActs } from './duo-acts'
import { DuoBar, DuoMarks } from './duo-bar'
import { DuoChoices } from './duo-choices'
import { DuoHead } from './duo-head'
import { onKeys } from './duo-keys'
import { DuoPicture } from './duo-picture'
import { DuoRule } from './duo-rule'
import { type Side, sides, type Timing } from './duo-time'
import { placeFrom, placementFor, placesFor } from './fit'
import { type CompareOptions, writeOptions } from './options'
import { moved, type Size, styleOf } from './placement'
import { Points } from './points'
import { keysSaid, noMarkInCommon } from './say'
import { commonMarks, markFor, pacesFor, timingFor } from './timing'
import { useDuo } from './use-duo'

interface DuoPlayerProps {
  readonly films: Readonly<Record<Side, ComparedFilm>>
  readonly fits: readonly Fit[]
  readonly initial: CompareOptions
  /** The part of the address that names the two moments. */
  readonly moments: string
}

const which = { first: 'First', second: 'Second' } as const
type OfBoth<Value> = Readonly<Record<Side, Value>>

/** How the second picture is shown: over the first where both are there, and turned round where that was asked. */
function laidOf(options: CompareOptions, sizes: OfBoth<Size | null>, fits: readonly Fit[]): CSSProperties | undefined {
  const { first, second } = sizes
  const turned = options.mirrored ? { transform: 'scaleX(-1)' } : undefined
  if (options.view === 'beside' || !first || !second) return turned
  const hand = { x: options.x / 1000, y: options.y / 1000, size: options.size / 100 }
  const placement = moved(
    placementFor(fits, placeFrom(fits, options.place), { first, second }, options.mirrored),
    hand,
    first,
  )
  return styleOf(placement, first, second)
}

/** Two moments of the same dive under one control. */
export function DuoPlayer({ films, fits, initial, moments }: DuoPlayerProps) {
  const [options, setOptions] = useState(initial)
  const [sizes, setSizes] = useState<OfBoth<Size | null>>({ first: null, second: null })
  const [wanted, setWanted] = useState<OfBoth<boolean>>({
    first: films.first.moment.host === null,
    second: films.second.moment.host === null,
  })
  const [lost, setLost] = useState<OfBoth<Lost | null>>({ first: null, second: null })
  const common = useMemo(() => commonMarks(films.first.marks, films.second.marks), [films])
  const measured = useMemo(() => commonMarks(films.first.measured, films.second.measured), [films])
  const together = [...common, ...measured]
  const mark = markFor(together, options)
  const { at, pace, shift } = options
  const timing = useMemo((): Timing => {
    const spans = { first: films.first.moment, second: films.second.moment }
    return timingFor(common, measured, spans, { at, pace, shift })
  }, [films, common, measured, at, pace, shift])
  const { start } = films.first.moment
  const duo = useDuo(timing, mark?.first ?? start, { first: films.first.frame, second: films.second.frame })

  // Once it rests: some browsers refuse an address that changes as often as a key that is held down.
  useEffect(() => {
    const chosen = writeOptions(options)
    const write = () => window.history.replaceState(null, '', `?${moments}${chosen && `&${chosen}`}`)
    const timer = setTimeout(write, 300)
    return () => clearTimeout(timer)
  }, [options, moments])

  const choose = (changes: Partial<CompareOptions>) => setOptions((before) => ({ ...before, ...changes }))
  const set =
    <Value,>(side: Side, value: Value) =>
    (before: OfBoth<Value>) => ({ ...before, [side]: value })
  const section = useRef<HTMLElement>(null)
  const want = (side: Side) => {
    flushSync(() => setWanted(set(side, true)))
    // The button that asked for it is gone: the keys go on working from the film.
    section.current?.querySelector<HTMLElement>(`[data-side=${side}] video`)?.focus()
  }
  const there = sides.filter((side) => films[side].moment.file !== null && wanted[side] && !lost[side])
  const view = there.length > 1 ? options.view : 'beside'
  const frame = Math.round(1000 * (films.second.frame ?? guessed))
  const places = placesFor(fits)
  const spans = {
    first: { start, end: films.first.moment.end ?? duo.whole.end },
    second: { start: films.second.moment.start, end: films.second.moment.end ?? timing.map.toSecond(duo.whole.end) },
  }
  return (
    <section
      ref={section}
      className="duo"
      aria-label="Two films under one control"
      onKeyDown={onKeys(duoActs({ duo, options, choose, common, frame }))}
    >
      <div className="duo-heads" data-view={view}>
        {sides.map((side) => (
          <DuoHead
            key={side}
            film={films[side]}
            which={which[side]}
            shown={duo.shown[side]}
            held={duo.held[side]}
            wanted={wanted[side]}
            lost={lost[side]}
            want={() => want(side)}
          />
        ))}
      </div>
      {there.length > 0 ? (
        <>
          <div
            className="duo-stage"
            data-view={view}
            data-films={there.length}
            style={{ '--shape': sizes.first ? sizes.first.width / sizes.first.height : 4 / 3 } as CSSProperties}
          >
            {there.map((side) => (
              <DuoPicture
                key={side}
                side={side}
                file={films[side].moment.file ?? ''}
                title={films[side].moment.title}
                mark={which[side]}
                duo={duo}
                size={sizes[side]}
                onSize={(size) => setSizes(set<Size | null>(side, size))}
                onLost={(by) => setLost(set<Lost | null>(side, by))}
                {...(side === 'second' ? { laid: laidOf({ ...options, view }, sizes, fits) } : {})}
                strength={side === 'second' && view === 'over' ? options.strength / 100 : 1}
              >
                {options.points ? (
                  <Points film={films[side]} size={sizes[side]} shown={duo.shown[side]} hollow={side === 'second'} />
                ) : null}
              </DuoPicture>
            ))}
          </div>
          <DuoRule
            timing={timing}
            whole={duo.whole}
            time={duo.time}
            marks={{ first: films.first.marks, second: films.second.marks }}
            common={common}
            spans={spans}
          />
          <DuoBar duo={duo} mark={mark} start={start} />
          <DuoMarks duo={duo} common={common} />
        </>
      ) : null}
      {together.length === 0 ? <p className="measure text-soft">{noMarkInCommon}</p> : null}
      <DuoChoices
        options={{ ...options, view, place: placeFrom(fits, options.place) }}
        choose={choose}
        together={together}
        mark={mark}
        paces={pacesFor(common)}
        places={places}
        frame={frame}
      />
      <Fold summary="Keys">
        <p className="measure text-13 text-soft">{keysSaid}</p>
      </Fold>
    </section>
  )
}
