import type { GuideView, Way } from '../[pair]/loader'

interface GuideFactsProps {
  readonly guide: GuideView
  readonly ways?: readonly Way[]
}

/** What a guide says first: what the skill is, from where it is taught, who signs it, how hard it is, where else it is done. */
export function GuideFacts({ guide, ways: more = [] }: GuideFactsProps) {
  const { summary, level, signer, difficulty, elsewhere } = guide
  const ways = [...elsewhere.map(({ href, name }) => ({ href, name: `also at: ${name}` })), ...more]
  return (
    <>
      <p className="text-ink">{summary}</p>
      <p>
        taught from {level} · {signer}
        {difficulty.map((sentence) => ` · ${sentence}`)}
      </p>
      {ways.length > 0 ? (
        <p className="no-print">
          {ways.map(({ href, name }, index) => (
            <span key={name}>
              {index > 0 ? ' · ' : ''}
              {href ? <a href={href}>{name}</a> : name}
            </span>
          ))}
        </p>
      ) : null}
    </>
  )
}
