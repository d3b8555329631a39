import type { ReactNode } from 'react'

/** The one sheet of a page: main content, with the plumb line down its margin on desks. */
export function Sheet({ children, plain = false }: { children: ReactNode; plain?: boolean }) {
  return (
    <main id="main" tabIndex={-1} className="outline-none">
      <div className={plain ? 'frame sheet' : 'frame'}>
        <div className={plain ? '' : 'sheet plumb -mx-4 px-4 md:-mx-8 md:px-8'}>{children}</div>
      </div>
    </main>
  )
}

/** Letters beyond which the sentence is set a size smaller, so that it stays two or three lines. */
const longSentence = 110

/** The one large sentence of a page. `margin` holds place, date or status; `children` is what quietly follows. */
export function PageHead({
  sentence,
  margin,
  children,
}: {
  sentence: ReactNode
  margin?: ReactNode
  children?: ReactNode
}) {
  const long = typeof sentence === 'string' && sentence.length > longSentence
  return (
    <div className="log-head pt-6 pb-5 md:pt-8">
      <div className={`log-margin pb-1 ${long ? 'md:pt-1.5' : 'md:pt-3'}`}>{margin}</div>
      <div>
        <h1 className={long ? 'measure text-18 md:text-24' : 'max-w-[44ch] text-24 text-balance md:text-34'}>
          {sentence}
        </h1>
        {children ? <div className="measure mt-1.5 text-soft">{children}</div> : null}
      </div>
    </div>
  )
}

/** A row of the log: the margin says where, when or how it stands. */
export function LogRow({
  margin,
  children,
  as: Tag = 'div',
  id,
}: {
  margin?: ReactNode
  children: ReactNode
  as?: 'div' | 'li'
  /** Where links lead to it. */
  id?: string
}) {
  return (
    <Tag className="log-row" id={id}>
      <div className="log-margin">{margin}</div>
      <div className="min-w-0">{children}</div>
    </Tag>
  )
}

/** What belongs beside the margin without a line of its own: drawings, tables, notices. */
export function Beside({ children }: { children: ReactNode }) {
  return (
    <div className="log-head">
      <div />
      <div className="min-w-0">{children}</div>
    </div>
  )
}

/** A part of a page under its own heading. */
export function Section({ title, aside, children }: { title: string; aside?: ReactNode; children: ReactNode }) {
  return (
    <section aria-label={title} className="pt-7">
      <div className="log-head pb-2">
        <div />
        <div className="flex flex-wrap items-baseline justify-between gap-x-6">
          <h2 className="text-18">{title}</h2>
          {aside ? <div className="text-13 text-soft">{aside}</div> : null}
        </div>
      </div>
      {children}
    </section>
  )
}
