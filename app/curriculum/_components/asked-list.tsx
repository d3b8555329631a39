import type { AskedView } from '../loader'

/** What a requirement asks, as it is written: one sentence a node, the author's reason beside it. */
export function AskedList({ asked }: { asked: AskedView }) {
  return (
    <div className="measure">
      <p>
        {asked.href ? <a href={asked.href}>{asked.sentence}</a> : asked.sentence}
        {asked.why ? <span className="text-soft"> {asked.why}</span> : null}
      </p>
      {asked.of.length > 0 ? (
        <ul className="ml-5 list-disc marker:text-edge">
          {asked.of.map((part) => (
            <li key={part.sentence} className="py-0.5">
              <AskedList asked={part} />
            </li>
          ))}
        </ul>
      ) : null}
    </div>
  )
}
