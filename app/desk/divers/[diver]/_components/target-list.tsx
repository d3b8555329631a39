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

/** Levels and board moves: how she stands to each, in a sentence, with what it waits for. */
export function TargetList({ items }: { items: readonly TargetItem[] }) {
  return (
    <ul>
      {items.map((item) => (
        <LogRow key={item.key} as="li" margin={item.ready ? 'ready' : heldWord[item.held]}>
          <h3 className="font-bold">{item.headline}</h3>
          {item.blocks.map((block) => (
            <Notice key={block} tone="warning">
              {block}
            </Notice>
          ))}
          {item.held === 'approved' || item.ready ? (
            <Fold summary="What it rests on">
              <Explained node={item.finding} />
            </Fold>
          ) : (
            <Explained node={item.finding} />
          )}
        </LogRow>
      ))}
    </ul>
  )
}
