'use client'

import { useState } from 'react'
import type { Quantity } from '@/lib/assessment/measure/measured'
import { flightBetween } from '@/lib/assessment/measure/taken'
import type { MarksView } from '../marks/marks-view'
import { readMetres } from '../points/draft'

/** A flight between the coach's own marks, with the drop that she states. */
export function useFlight(marks: MarksView, board: number | null) {
  const [drop, setDrop] = useState(String(board ?? ''))
  const [give, setGive] = useState('0.1')
  // What is no number is refused by the measure itself, in words.
  const stated: Quantity = { value: readMetres(drop) ?? Number.NaN, sd: readMetres(give) ?? Number.NaN }
  return { drop, give, setDrop, setGive, stated, taken: flightBetween(marks.own, stated) }
}

export type FlightDraft = ReturnType<typeof useFlight>
