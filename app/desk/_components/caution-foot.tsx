import type { ComponentProps } from 'react'
import { Caution } from '@/app/_components/domain/caution/caution'
import { Beside } from '@/app/_components/ui/sheet'

/** The caution at the foot of a page about a diver. */
export function CautionFoot({ about }: ComponentProps<typeof Caution>) {
  return (
    <Beside>
      <div className="pt-6">
        <Caution about={about} />
      </div>
    </Beside>
  )
}
