import { ScrollRegion } from '@/app/_components/ui/scroll-region'
import type { WaitLine } from '../loader'

/** What is waited for, with how many are held up by it and how many wait for it at all. */
export function WaitTable({ caption, lines }: { caption: string; lines: readonly WaitLine[] }) {
  return (
    <ScrollRegion label={caption}>
      <table className="pipeline-table wait-table">
        <caption className="sr-only">{caption}</caption>
        <thead>
          <tr>
            <th scope="col">Waited for</th>
            <th scope="col" className="is-number">
              held up
            </th>
            <th scope="col" className="is-number">
              waiting
            </th>
          </tr>
        </thead>
        <tbody>
          {lines.map(({ says, heldUp, waiting }) => (
            <tr key={waiting.href}>
              <th scope="row">{says}</th>
              {[
                { ...heldUp, label: 'held up' },
                { ...waiting, label: 'waiting' },
              ].map(({ count, href, label }) => (
                <td key={label} className="is-number">
                  {count === 0 ? (
                    <span className="text-soft">0</span>
                  ) : (
                    <a href={href} aria-label={`${count} ${label}: ${says}`}>
                      {count}
                    </a>
                  )}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  )
}
