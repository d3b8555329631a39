import { useState } from 'react'
import { Dialog } from '@/app/_components/ui/dialog'

/** At the bottom left of every attempt: what to do first. */
export function ContactButton() {
  const [open, setOpen] = useState(false)
  return (
    <>
      <button type="button" className="deck-contact" onClick={() => setOpen(true)}>
        Contact or bad landing
      </button>
      <Dialog title="Contact or bad landing" open={open} onClose={() => setOpen(false)}>
        <ol className="deck-steps">
          <li>
            <b>After a knock to the head: out of the water, the emergency action plan, medical advice.</b>
          </li>
          <li>
            <b>Tell the head coach now.</b>
          </li>
          <li>Follow the facility’s rules, the governing body’s rules and local law.</li>
        </ol>
        <p>
          The deck does not record incidents yet: write it down where your facility asks for it. It supports, and never
          replaces, the judgement of a qualified coach standing on the deck.
        </p>
      </Dialog>
    </>
  )
}
