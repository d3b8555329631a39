'use client'

import { type ReactNode, useEffect, useId, useRef } from 'react'

interface DialogProps {
  readonly title: string
  readonly open: boolean
  /** Called for Escape, the close button and the browser's own ways of closing. */
  readonly onClose: () => void
  readonly children: ReactNode
}

/** A native modal dialog: the browser holds the focus inside, gives it back, and closes on Escape. */
export function Dialog({ title, open, onClose, children }: DialogProps) {
  const dialog = useRef<HTMLDialogElement>(null)
  const heading = useId()
  useEffect(() => {
    if (open && !dialog.current?.open) dialog.current?.showModal()
    if (!open && dialog.current?.open) dialog.current.close()
  }, [open])
  return (
    <dialog ref={dialog} className="dialog" aria-labelledby={heading} onClose={onClose}>
      <div className="mb-3 flex items-baseline justify-between gap-4">
        <h2 id={heading} className="text-18">
          {title}
        </h2>
        <button type="button" className="button button-text" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </div>
      {children}
    </dialog>
  )
}
