import type { Caution, Result } from '@/lib/assessment/measure/take'
import {
  basisName,
  checkPoints,
  resultName,
  sayCaution,
  sayInterval,
  sayOtherWay,
  sayValue,
} from '@/lib/assessment/measure/wording-taken'

function Line({ result }: { result: Result }) {
  const { what, plausible, check } = result
  return (
    <li className={check ? 'border-l-4 border-coral bg-coral-wash pl-2' : ''}>
      <span className="font-bold">{sayValue(result)}</span> {resultName[what]}
      <span className="block text-13 text-soft">
        95 % sure of {sayInterval(result, result)}
        {plausible ? ` · expected ${sayInterval(result, plausible)}, ${basisName[plausible.basis]}` : ''}
      </span>
      {what === 'turned' ? (
        <span className="block text-13 text-soft">or {sayOtherWay(result)}, if half a turn went by and more</span>
      ) : null}
      {check ? <span className="block text-13 font-bold text-coral">{checkPoints}</span> : null}
    </li>
  )
}

interface ResultsProps {
  readonly results: readonly Result[]
  readonly cautions: readonly Caution[]
}

/** What comes of a measure: each number with its interval and what could be expected, and what to look at again. */
export function ResultsList({ results, cautions }: ResultsProps) {
  return (
    <>
      <ul className="results-list">
        {results.map((result) => (
          <Line key={result.what} result={result} />
        ))}
      </ul>
      {cautions.map((caution) => (
        <p key={caution} className="text-13 font-bold text-coral">
          {sayCaution[caution]}
        </p>
      ))}
    </>
  )
}
