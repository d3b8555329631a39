import {
  type AskedMeasure,
  type Band,
  type BandBasis,
  bandRatings,
  type MeasureInstant,
  type MeasureName,
  type MeasureUnit,
} from '../../curriculum/measure/model'
import { type Rating, ratings } from '../../curriculum/model'
import { listed, sentence } from '../readiness/grammar'
import type { Suggestion } from './suggest'

const whats: Readonly<Record<MeasureName, string>> = {
  bodyTilt: 'how far the body leans from the vertical',
  armAngle: 'how far the arms are from straight up',
  hipAngle: 'the angle at the hip between shoulder and ankle, 180° when straight',
  distanceFromTip: 'how far the nearest part of the body is from the tip of the board, measured level',
  rotationRate: 'how fast the trunk turns',
  flightTime: 'the time in the air',
  takeOffSpeed: 'the speed upwards at the last contact',
  rise: 'how high the body rises above where it left the board',
  entrySpeed: 'the speed at the water',
}

const instants: Readonly<Record<MeasureInstant, string>> = {
  'set-up': 'as the set-up begins',
  movement: 'as the movement begins',
  finish: 'as the finish begins',
  hurdle: 'as the hurdle begins',
  stance: 'as the stance begins',
  press: 'as the press begins',
  'take-off': 'as the take-off begins, with the board at its lowest',
  flight: 'as the flight begins, at the last contact',
  'twist start': 'as the twist starts',
  'twist stop': 'as the twist stops',
  'come-out': 'as the come-out begins',
  entry: 'as the water is first touched',
  'highest point': 'at the highest point',
  passing: 'as the body passes the level of the board on the way down',
  'whole flight': 'from the last contact to the water',
}

const symbols: Readonly<Record<MeasureUnit, string>> = {
  degrees: '°',
  metres: ' m',
  seconds: ' s',
  'metres a second': ' m/s',
  'degrees a second': '°/s',
}

function sayBand({ least, most }: Band, unit: MeasureUnit): string {
  const symbol = symbols[unit]
  if (least === undefined) return `up to ${most}${symbol}`
  return most === undefined ? `from ${least}${symbol}` : `from ${least} to ${most}${symbol}`
}

const bases: Readonly<Record<BandBasis, string>> = {
  judgement: 'these numbers are the programme’s judgement',
  memory: 'these numbers are from memory, without a source at hand',
  published: 'these numbers were published',
}

/** What a criterion asks to be measured and what a value suggests, as sentences: what and when, the bands, where they come from. */
export function sayAsked({ what, at, unit, bands, basis, source }: AskedMeasure): string[] {
  const each = bandRatings.toReversed().map((rating) => `a ${rating} ${sayBand(bands[rating], unit)}`)
  return [
    `measured on video: ${whats[what]}, ${instants[at]}`,
    `it suggests ${listed(each)}; the coach decides`,
    source === null ? bases[basis] : `${bases[basis]}: ${source}`,
    ...(what === 'distanceFromTip' ? ['nearer than the facility’s own limit is unsafe, whatever it suggests'] : []),
  ].map(sentence)
}

/** What a measured value suggests: "suggests 3, perhaps 2", or to look at the points again. */
export function saySuggestion(suggestion: Suggestion): string {
  if (suggestion.kind === 'check the points')
    return `check the points, for this is hardly possible${suggestion.unsafe ? '; if they stand, it is unsafe' : ''}`
  if (suggestion.kind === 'over the board') return 'over the board, so check the points; if they stand, it is unsafe'
  const { rating, from, to } = suggestion
  const others = ratings.filter((other) => other >= from && other <= to && other !== rating).map(String)
  return `suggests ${rating}${others.length > 0 ? `, perhaps ${listed(others, 'or')}` : ''}`
}

/** A rating beside a suggestion: "rated 2", "rated 2 by SB", "not rated". */
export const sayRated = (rated: Rating | null, by: string | null): string =>
  rated === null ? 'not rated' : `rated ${rated}${by === null ? '' : ` by ${by}`}`
