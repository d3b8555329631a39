import { useRef, useState } from 'react'
import { Dialog } from '@/app/_components/ui/dialog'
import { TextAreaField } from '@/app/_components/ui/field'
import { type IncidentKind, incidentKinds } from '@/lib/assessment/record'
import type { Pair } from '@/lib/curriculum/edition/curriculum'
import { succeeds } from '../queue/deck-queue'
import { makeIncident } from '../state/incidents'
import { noteLimit } from '../state/items'
import { ContactSteps } from './contact-steps'
import { useDeck } from './deck-context'

interface ContactButtonProps {
  readonly diver: string
  readonly pair: Pair
  /** The attempt, where it was kept already. */
  readonly attempt?: string
}

/** At the bottom left of every attempt: one tap, then what it was; it is recorded at once and pauses at once. */
export function ContactButton({ diver, pair, attempt }: ContactButtonProps) {
  const { queue, dispatch, stamp } = useDeck()
  const [open, setOpen] = useState(false)
  const [note, setNote] = useState('')
  const [recorded, setRecorded] = useState<{ readonly id: string; readonly what: IncidentKind } | null>(null)
  const [problem, setProblem] = useState<string | null>(null)
  const busy = useRef(false)
  const long = note.trim().length - noteLimit

  const record = async (what: IncidentKind): Promise<void> => {
    // Two taps on a wet screen are one incident.
    if (busy.current || recorded || long > 0) return
    busy.current = true
    const more = { note, attempt: attempt ?? null }
    const item = makeIncident({ diver, ...pair.holding }, what, more, stamp())
    const kept = await succeeds(queue.add([item]))
    busy.current = false
    if (!kept) return setProblem('This phone could not keep it. Tell the head coach now, and try again.')
    dispatch({ type: 'incident', item })
    setRecorded({ id: item.id, what })
    setProblem(null)
  }
  const close = (): void => {
    setOpen(false)
    setRecorded(null)
    setNote('')
    setProblem(null)
  }
  return (
    <>
      <button type="button" className="deck-contact" onClick={() => setOpen(true)}>
        Contact or bad landing
      </button>
      <Dialog title="Contact or bad landing" open={open} onClose={close}>
        {recorded ? (
          <ContactSteps recorded={recorded} pair={pair} />
        ) : (
          <div className="deck-choices">
            <p>
              <b>After a knock to the head: out of the water, the emergency action plan, medical advice.</b>
            </p>
            {problem ? <p role="alert">{problem}</p> : null}
            {incidentKinds.map((what) => (
              <button key={what} type="button" className="button" onClick={() => void record(what)}>
                {what.charAt(0).toUpperCase() + what.slice(1)}
              </button>
            ))}
            <TextAreaField
              label="Note"
              name="incident-note"
              hint="If you want one: write it before you tap what it was. No need to."
              rows={2}
              value={note}
              error={long > 0 ? `The note is ${long} characters too long.` : undefined}
              onChange={(event) => setNote(event.target.value)}
            />
          </div>
        )}
      </Dialog>
    </>
  )
}
