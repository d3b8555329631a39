import type { ReactNode } from 'react'
import { Fold } from '@/app/_components/ui/fold'
import { Notice } from '@/app/_components/ui/notice'
import { LogRow } from '@/app/_components/ui/sheet'
import { Explained } from '@/app/desk/_components/explained'
import type { TargetView } from '../loader'

/** What stands in the way, and what the step asks or rests on. */
function Ground({ item }: { item: TargetView }) {
  return (
    <>
      {item.blocks.map((block) => (
        <Notice key={block} tone="warning">
          {block}
        </Notice>
      ))}
      <Explained node={item.finding} brief />
    </>
  )
}

/** A step in a sentence, with its ground read out or folded; the sentence leads to where it is decided. */
function Target({ item, open = false, name = item.headline }: { item: TargetView; open?: boolean; name?: string }) {
  return (
    <>
      <h3 className="font-bold">{item.href ? <a href={item.href}>{name}</a> : name}</h3>
      {open ? (
        <Ground item={item} />
      ) : (
        <Fold summary={item.held === 'no' && !item.ready ? 'What it asks' : 'What it rests on'}>
          <Ground item={item} />
        </Fold>
      )}
    </>
  )
}

/** Steps that need not be read now, folded into one line. */
function Folded({ margin, summary, items }: { margin: string; summary: ReactNode; items: readonly TargetView[] }) {
  if (items.length === 0) return null
  return (
    <LogRow as="li" margin={margin}>
      <Fold summary={summary}>
        <ul className="grid gap-3">
          {items.map((item) => (
            <li key={item.key}>
              <Target item={item} />
            </li>
          ))}
        </ul>
      </Fold>
    </LogRow>
  )
}

const steps = (items: readonly TargetView[]): string => items.map(({ step }) => step).join(', ')

/** Levels and board moves: what is ready and what comes next first, the next level read out; the rest by name, folded. `said` heads the page. */
export function TargetList({ items, said }: { items: readonly TargetView[]; said: string }) {
  const ready = items.filter((item) => item.ready)
  const next = items.filter((item) => item.next)
  const open = items.filter(({ held }) => held === 'no')
  return (
    <ul>
      {[...ready, ...next].map((item) => (
        <LogRow key={item.key} as="li" margin={item.ready ? 'ready' : 'next'}>
          <Target
            item={item}
            open={item.next && item.key.startsWith('level:')}
            name={item.headline === said ? item.step : item.headline}
          />
        </LogRow>
      ))}
      <Folded
        margin="to review"
        summary={steps(items.filter(({ held }) => held === 'to review'))}
        items={items.filter(({ held }) => held === 'to review')}
      />
      <Folded
        margin="further on"
        summary={steps(open.filter((item) => !item.ready && !item.next))}
        items={open.filter((item) => !item.ready && !item.next)}
      />
      {(['approved', 'recognised'] as const).map((word) => (
        <Folded
          key={word}
          margin={word}
          summary={steps(items.filter(({ held }) => held === word))}
          items={items.filter(({ held }) => held === word)}
        />
      ))}
    </ul>
  )
}
