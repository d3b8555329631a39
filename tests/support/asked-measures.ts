import type { AskedMeasure } from '@/lib/curriculum/measure/model'

/** A measure with sound bands: the distance from the board in metres, as the diver passes it. */
export const anAskedMeasure = (changes: Partial<AskedMeasure> = {}): AskedMeasure => ({
  what: 'distanceFromTip',
  at: 'passing',
  unit: 'metres',
  bands: { 1: { least: 0.3 }, 2: { least: 0.5 }, 3: { least: 0.6 }, 4: { least: 0.75, most: 1.5 } },
  basis: 'judgement',
  source: null,
  ...changes,
})
