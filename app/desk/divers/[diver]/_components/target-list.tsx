import type { ComponentProps } from 'react'
import { Fold } from '@/app/_components/ui/fold'
import { Notice } from '@/app/_components/ui/notice'
import { LogRow } from '@/app/_components/ui/sheet'
import { Explained } from '@/app/desk/_components/explained'

interface TargetItem {
  readonly key: string
  readonly step: string
  readonly held: 'no' | 'approved' | 'recognised' | 'to review'
  readonly ready: boolean
  readonly headline: string
  readonly blocks: readonly string[]
  readonly finding: ComponentProps<typeof Explained>['node']
}

const heldWord = { no: 'not yet', approved: 'approved', recognised: 'recognised', 'to review': 'to review' } as const

const isOpen = ({ key, held, ready }: TargetItem, next?: string): boolean =>
  !ready && (key === next || held === 'to review' || held === 'recognised')

/** What stands in the way, and what the step asks or rests on. */
function Ground({ item }: { item: TargetItem }) {
  return (
    <>
      {item.blocks.map((block) => (
        <Notice key={block} tone="warning">
          {block}
        </Notice>
      ))}
      <Explained node={item.finding} />
    </>
  )
}

/** Levels and board moves: how she stands to each, in a sentence; read out for the next step and for what is to review. */
export function TargetList({ items }: { items: readonly TargetItem[] }) {
  const next = items.find(({ key, held }) => key.startsWith('level:') && held === 'no')?.key
  return (
    <ul>
      {items.map((item) => (
        <LogRow key={item.key} as="li" margin={item.ready ? 'ready' : heldWord[item.held]}>
          <h3 className="font-bold">{item.headline}</h3>
          {isOpen(item, next) ? (
            <Ground item={item} />
          ) : (
            <Fold summary={item.held === 'no' && !item.ready ? 'What it asks' : 'What it rests on'}>
              <Ground item={item} />
            </Fold>
          )}
        </LogRow>
      ))}
    </ul>
  )
}
