import { type FormEvent, useState } from 'react'
import { Dialog } from '@/app/_components/ui/dialog'
import { TextAreaField } from '@/app/_components/ui/field'

const usual = ['Tapped the wrong number.', 'Saw it again on video.', 'Talked it over with another coach.'] as const

interface ReasonDialogProps {
  readonly open: boolean
  readonly onClose: () => void
  readonly onReason: (reason: string) => void
}

/** Why an observation is corrected: a usual reason in one tap, or a few words. */
export function ReasonDialog({ open, onClose, onReason }: ReasonDialogProps) {
  const [reason, setReason] = useState('')
  const [error, setError] = useState<string>()
  const submit = (event: FormEvent) => {
    event.preventDefault()
    const length = reason.trim().length
    if (length < 3) return setError('Say in a few words why you correct it.')
    if (length > 500) return setError(`The reason is ${length - 500} characters too long.`)
    onReason(reason)
  }
  return (
    <Dialog title="Why do you correct it?" open={open} onClose={onClose}>
      <form onSubmit={submit} className="deck-choices" noValidate>
        {usual.map((text) => (
          <button key={text} type="button" className="button" onClick={() => setReason(text)}>
            {text}
          </button>
        ))}
        <TextAreaField
          label="Reason"
          name="reason"
          value={reason}
          error={error}
          onChange={(event) => setReason(event.target.value)}
        />
        <button type="submit" className="button button-go">
          Keep the correction
        </button>
      </form>
    </Dialog>
  )
}
