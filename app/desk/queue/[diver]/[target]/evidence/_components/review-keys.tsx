'use client'

import { useEffect } from 'react'
import { CheckField } from '@/app/_components/ui/check-field'
import { combined, controlOf, pressControl, typing, useKeysOn } from '@/app/desk/_components/single-keys'

/** Closes the question that is being written, and puts the focus back on its button. */
function leave(): boolean {
  const panel = document.activeElement?.closest<HTMLDetailsElement>('details[open]')
  if (!panel) return false
  panel.open = false
  panel.querySelector('summary')?.focus()
  return true
}

/** Whether the film that stands here has not shown a frame yet. */
const unseen = (): boolean => {
  const film = document.querySelector<HTMLVideoElement>('.review-moment video')
  return film !== null && film.readyState < film.HAVE_CURRENT_DATA
}

/** A key that is held is meant for the moment at which it was pressed; none accepts a film before it is seen. */
function onKey(event: KeyboardEvent): boolean {
  if (combined(event)) return false
  if (event.key === 'Escape') return leave()
  const control = typing(event.target) ? null : controlOf(document, event.key)
  if (control && !event.repeat && !(event.key === 'a' && unseen())) pressControl(control)
  return control !== null
}

/** Goes through the moments with the keyboard; it can be turned off, for whoever speaks to the browser. `away`: no film plays here. */
export function ReviewKeys({ away }: { away: boolean }) {
  const [on, turn] = useKeysOn()
  useEffect(() => {
    if (!on) return
    const listen = (event: KeyboardEvent) => {
      if (onKey(event)) event.preventDefault()
    }
    window.addEventListener('keydown', listen)
    return () => window.removeEventListener('keydown', listen)
  }, [on])
  return (
    <div className="list-keys no-print">
      <CheckField label="Work with keys" checked={on} onChange={(event) => turn(event.target.checked)} />
      <span>
        <kbd>a</kbd> accept{away ? '' : ', once the film shows'} · <kbd>q</kbd> question · <kbd>n</kbd> next ·{' '}
        <kbd>b</kbd> back · <kbd>r</kbd> {away ? 'open' : 'replay'} ·{' '}
        {away ? (
          <>
            <kbd>u</kbd> it does not open ·{' '}
          </>
        ) : null}
        <kbd>Esc</kbd> out of the question
      </span>
    </div>
  )
}
