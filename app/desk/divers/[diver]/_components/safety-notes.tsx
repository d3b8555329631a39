import { Notice } from '@/app/_components/ui/notice'
import { Beside } from '@/app/_components/ui/sheet'

interface SafetyNotesProps {
  readonly href: string
  readonly warnings: readonly string[]
  readonly notes: readonly string[]
}

/** What is paused and what asks for care, in short, and the way to all of it. */
export function SafetyNotes({ href, warnings, notes }: SafetyNotesProps) {
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
        <p>
          <a href={href}>Incidents, stand-downs, growth and consent</a>
        </p>
      </div>
    </Beside>
  )
}
