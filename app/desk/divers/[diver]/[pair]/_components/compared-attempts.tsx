import type { ComponentProps } from 'react'
import { Button } from '@/app/_components/ui/button'
import { AttemptTable } from '@/app/desk/_components/attempt-table'

/** The attempts; where two or more have moments, two of these can be ticked and held against each other. */
export function ComparedAttempts({ caption, rows }: Pick<ComponentProps<typeof AttemptTable>, 'caption' | 'rows'>) {
  const moments = rows.flatMap((row) => row.moments)
  if (moments.length < 2) return <AttemptTable caption={caption} rows={rows} />
  return (
    <form action="/desk/moments/compare">
      <AttemptTable caption={caption} rows={rows} choose />
      <p className="flex flex-wrap items-center gap-x-4 gap-y-2 pt-3">
        <Button>Compare two moments</Button>
        <span className="text-13 text-soft">Tick the two in the last column.</span>
      </p>
    </form>
  )
}
