import { DropShape } from '../status/status-drop'

/** How a node stands: of the curriculum alone a station, of a diver a drop; a port opens into another family. */
export type TreeState = 'station' | 'held' | 'lapsed' | 'to sign' | 'open' | 'closed' | 'port'

/** The mark of a node, 16 wide, its middle at (8, 0). */
export function TreeMark({ state }: { state: TreeState }) {
  if (state === 'station') return <circle className="tree-station" cx="8" cy="0" r="4" />
  if (state === 'port') return <path className="tree-opening" d="M6-5h5v10h-5" />
  return (
    <g className={`drop tree-drop-${state.replace(' ', '-')}`} transform="translate(0 -10)">
      <DropShape status={state === 'held' ? 'met' : state === 'lapsed' ? 'lapsed' : 'unproven'} />
      {state === 'to sign' ? <path className="tree-signature" d="M1 22h14" /> : null}
    </g>
  )
}

const meaning: Readonly<Record<Exclude<TreeState, 'station' | 'port'>, string>> = {
  held: 'held or recognised',
  lapsed: 'lapsed or in doubt',
  'to sign': 'to sign',
  open: 'open',
  closed: 'closed',
}

/** What the marks of a diver's tree mean. */
export function TreeLegend() {
  return (
    <ul className="legend">
      {(Object.keys(meaning) as (keyof typeof meaning)[]).map((state) => (
        <li key={state}>
          <svg className="tree-legend-mark" viewBox="0 -11 16 24" width="14" height="21" aria-hidden="true">
            <TreeMark state={state} />
          </svg>{' '}
          {meaning[state]}
        </li>
      ))}
    </ul>
  )
}
