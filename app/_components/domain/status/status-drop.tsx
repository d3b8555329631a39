import type { Status } from '@/lib/assessment/readiness/finding'

const outline = 'M8 1.5C6.6 4.2 2.5 8.6 2.5 12.3a5.5 5.5 0 0 0 11 0C13.5 8.6 9.4 4.2 8 1.5z'
const lowerHalf = 'M3 10.6h10c.3.6.5 1.1.5 1.7a5.5 5.5 0 0 1-11 0c0-.6.2-1.1.5-1.7z'
const across = 'M.8 15.4L15.2 6.2'

/** The drop: full, half empty, outlined, barred. Decorative: a word always stands beside it. */
export function StatusDrop({ status, large = false }: { status: Status; large?: boolean }) {
  const [width, height] = large ? [22, 26.1] : [16, 19]
  return (
    <svg className="drop" viewBox="0 0 16 19" width={width} height={height} aria-hidden="true">
      <DropShape status={status} />
    </svg>
  )
}

/** The shape alone, 16 wide and 19 high, for drawings; stands inside an element of the class `drop`. */
export function DropShape({ status }: { status: Status }) {
  return (
    <>
      <path className={status === 'met' ? 'drop-full' : 'drop-outline'} d={outline} />
      {status === 'lapsed' ? <path className="drop-full" d={lowerHalf} /> : null}
      {status === 'unmet' ? (
        <>
          <path className="drop-bar-gap" d={across} />
          <path className="drop-bar" d={across} />
        </>
      ) : null}
    </>
  )
}
