'use client'

import { useRef } from 'react'
import { measureTaken } from '@/lib/assessment/measure/take'
import { nameKept, nameTaken, sayProblem, takenHint } from '@/lib/assessment/measure/wording-taken'
import type { MarksView } from '../marks/marks-view'
import { SaidLine } from '../said-line'
import { saidOf, useSending } from '../use-sending'
import { MeasureChoices } from './choices'
import { FlightFields } from './flight-fields'
import type { MeasureAction, MeasureAsk, MeasuresView, SavedMeasure, TakeBackAction } from './measures-view'
import { ResultsList } from './results-list'
import { SavedMeasures } from './saved-measures'
import { SlotList } from './slot-list'
import { useFlight } from './use-flight'
import type { Measuring } from './use-measuring'

interface MeasurePanelProps {
  readonly measures: MeasuresView
  readonly marks: MarksView
  readonly measuring: Measuring
  readonly measureAction: MeasureAction
  readonly takeBackAction: TakeBackAction
  readonly shown: string | null
  readonly onShow: (measure: SavedMeasure | null) => void
}

/** A measure on the frame that is shown: what to place, what comes of it as it is placed, and what was kept. */
export function MeasurePanel({ measures, marks, measuring, shown, onShow, ...actions }: MeasurePanelProps) {
  const { moment, board, saved } = measures
  const { draft, misplaced, dropped, undo, clear } = measuring
  const { said, pending, send } = useSending()
  const flight = useFlight(marks, board)
  const taken = draft.kind === 'flight' ? flight.taken : measuring.taken
  const taking = taken && measureTaken(taken, board)
  const asked: MeasureAsk['taken'] | null =
    draft.kind === 'flight' ? { kind: 'flight', drop: flight.stated } : measuring.taken
  const kept = useRef<HTMLUListElement>(null)
  const save = () =>
    asked &&
    !pending &&
    send(async () => saidOf(await actions.measureAction({ moment, taken: asked }), `Kept: ${nameTaken(draft)}.`))
  const takeBack = (measure: SavedMeasure) => {
    if (pending) return
    if (measure.id === shown) onShow(null)
    const ask = { moment, measure: measure.id }
    const said = `Taken back: ${nameKept(measure.taken)}.`
    // Its button goes with it: the keys of the player go on working from the list.
    send(
      async () => saidOf(await actions.takeBackAction(ask), said),
      (done) => done && kept.current?.focus(),
    )
  }
  return (
    <div className="grid content-start gap-3">
      <MeasureChoices measuring={measuring} hasBoard={board !== null} />
      {takenHint[draft.kind] ? <p className="text-13 text-soft">{takenHint[draft.kind]}</p> : null}
      {draft.kind === 'flight' ? <FlightFields marks={marks} flight={flight} /> : <SlotList measuring={measuring} />}
      {misplaced ? (
        <p role="alert" className="border-l-4 border-coral bg-coral-wash px-3 py-2 text-13">
          {misplaced}
        </p>
      ) : null}
      {dropped ? (
        <p role="status" className="border-l-4 border-coral bg-coral-wash px-3 py-2 text-13">
          {dropped}
        </p>
      ) : null}
      <div aria-live="polite">
        {taking?.ok ? <ResultsList results={taking.results} cautions={taking.cautions} /> : null}
        {taking && !taking.ok ? <p className="text-13 text-soft">{sayProblem(taking.problem)}</p> : null}
        {taking ? null : (
          <p className="text-13 text-soft">Mark “flight” and “entry” first: the flight lies between them.</p>
        )}
      </div>
      <div className="flex flex-wrap items-center gap-3">
        <button
          type="button"
          className="button button-go"
          disabled={!taking?.ok}
          aria-disabled={pending}
          onClick={save}
        >
          Keep this measure
        </button>
        {draft.kind === 'flight' ? null : (
          <>
            <button type="button" className="button" aria-disabled={draft.past.length === 0} onClick={undo}>
              Undo
            </button>
            <button type="button" className="button" onClick={clear}>
              Clear
            </button>
          </>
        )}
      </div>
      <SaidLine said={said} pending={pending} />
      <SavedMeasures list={kept} saved={saved} shown={shown} pending={pending} onShow={onShow} onTakeBack={takeBack} />
    </div>
  )
}
