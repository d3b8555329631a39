import type { ArcDrawing, ArcSize, BodyLine } from './geometry'

/** The dive itself: water, board, course, and the two verticals that the body is held against. */
export function Scene({ drawing, size }: { drawing: ArcDrawing; size: ArcSize }) {
  const { scene, width } = drawing
  if (!scene) return null
  const { board, water } = scene
  if (!size.detailed) {
    return (
      <g>
        <path className="arc-water-line" d={`M0 ${water.top}H${width}`} />
        <path className="arc-board" d={`M0 ${board.tip.y}H${board.tip.x}`} />
        <path className="arc-path" d={scene.path} />
      </g>
    )
  }
  return (
    <g>
      <rect className="arc-water" x="0" y={water.top} width={width} height={water.bottom - water.top} />
      <path className="arc-water-line" d={`M0 ${water.top}H${width}`} />
      {board.firm ? (
        <>
          <rect className="arc-deck" x="0" y={board.tip.y} width={board.tip.x} height={water.bottom - board.tip.y} />
          <path className="arc-wall" d={`M${board.tip.x} ${board.tip.y}V${water.bottom}`} />
        </>
      ) : null}
      <path className="arc-board" d={`M0 ${board.tip.y}H${board.tip.x}`} />
      <path className="arc-path" d={scene.path} />
      {scene.twist.map((strand) => (
        <path key={strand} className="arc-strand" d={strand} />
      ))}
      {scene.turn ? <path className="arc-turn" d={scene.turn} /> : null}
      {[scene.stack, scene.line].map((body) => (
        <Body key={body.x} {...body} />
      ))}
      {scene.stations.map(({ x, y }) => (
        <circle key={x} className="arc-station" cx={x} cy={y} r="2.5" />
      ))}
    </g>
  )
}

/** A body as one vertical: a ring where the head is, toes while it stands. */
function Body({ x, top, bottom, head, toes }: BodyLine) {
  const foot = toes === 0 ? bottom : bottom - 5
  return (
    <g>
      <path className="arc-body" d={`M${x} ${top}V${foot}h${7 * toes}`} />
      <circle className="arc-head" cx={x} cy={head} r="4" />
    </g>
  )
}
