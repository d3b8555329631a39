import { Notice } from '@/app/_components/ui/notice'
import { Beside } from '@/app/_components/ui/sheet'

interface SafetyNotesProps {
  readonly warnings: readonly string[]
  readonly notes: readonly string[]
}

/** What keeps a diver from diving, and what asks for care, in short. */
export function SafetyNotes({ warnings, notes }: SafetyNotesProps) {
  if (warnings.length + notes.length === 0) return null
  return (
    <Beside>
      <div className="grid gap-2">
        {warnings.map((text) => (
          <Notice key={text} tone="warning">
            {text}
          </Notice>
        ))}
        {notes.map((text) => (
          <Notice key={text}>{text}</Notice>
        ))}
      </div>
    </Beside>
  )
}
