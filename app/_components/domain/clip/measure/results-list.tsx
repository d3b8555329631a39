import type { Result } from '@/lib/assessment/measure/take'
import {
  basisName,
  bentLine,
  checkPoints,
  resultName,
  sayInterval,
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
      {check ? <span className="block text-13 font-bold text-coral">{checkPoints}</span> : null}
    </li>
  )
}

/** What comes of a measure: each number with its interval and what could be expected. */
export function ResultsList({ results, bent = false }: { results: readonly Result[]; bent?: boolean }) {
  return (
    <>
      <ul className="results-list">
        {results.map((result) => (
          <Line key={result.what} result={result} />
        ))}
      </ul>
      {bent ? <p className="text-13 font-bold text-coral">{bentLine}</p> : null}
    </>
  )
}
