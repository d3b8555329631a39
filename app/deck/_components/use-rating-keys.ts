import { useEffect, useRef } from 'react'
import type { Rating } from '@/lib/curriculum/model'
import { criticalAtHand } from '../state/critical'
import type { OpenDraft } from './use-draft'

const typing = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.closest('input:not([type=radio]), textarea, select, dialog') !== null

const focused = (): HTMLElement | null | undefined => document.activeElement?.closest<HTMLElement>('[data-criterion]')

/** Puts the focus on a criterion: on its chosen rating, else on its first. */
function focusOn(row: HTMLElement | undefined): void {
  const radio = row?.querySelector<HTMLElement>('input:checked') ?? row?.querySelector<HTMLElement>('input')
  radio?.focus()
  row?.scrollIntoView({ block: 'nearest' })
}

function stepRow(by: number): void {
  const rows = [...document.querySelectorAll<HTMLElement>('[data-criterion]')]
  const at = rows.indexOf(focused() ?? rows[0] ?? document.body)
  focusOn(focused() ? rows[(at + by + rows.length) % rows.length] : rows[0])
}

/** Opens the phase before or after the one that is open; at the ends it stays. */
export function stepPhase({ sheet, phase, openPhase }: OpenDraft, by: number): void {
  const at = sheet.phases.findIndex((entry) => entry.phase === phase)
  const next = sheet.phases[at + by]
  if (next) openPhase(next.phase)
}

function onKey(event: KeyboardEvent, open: OpenDraft): void {
  if (event.ctrlKey || event.metaKey || event.altKey || typing(event.target)) return
  const onRadio = event.target instanceof HTMLInputElement
  if (/^[0-4]$/.test(event.key)) {
    const fallback =
      criticalAtHand(open.sheet, open.draft, open.phase, null)?.criterion.key ?? open.sheet.rows[0]?.criterion.key
    const criterion = focused()?.dataset.criterion ?? fallback
    if (criterion) open.act({ type: 'rate', criterion, rating: Number(event.key) as Rating })
  } else if (event.key === 'ArrowDown' || event.key === 'ArrowUp') stepRow(event.key === 'ArrowDown' ? 1 : -1)
  else if (!onRadio && (event.key === 'ArrowRight' || event.key === 'ArrowLeft'))
    stepPhase(open, event.key === 'ArrowRight' ? 1 : -1)
  else return
  event.preventDefault()
}

/** 0–4 rate the criterion with the focus, or the critical one at hand; up and down change it, left and right the phase. */
export function useRatingKeys(open: OpenDraft): void {
  const latest = useRef(open)
  useEffect(() => {
    latest.current = open
  })
  useEffect(() => {
    const listen = (event: KeyboardEvent) => onKey(event, latest.current)
    window.addEventListener('keydown', listen)
    return () => window.removeEventListener('keydown', listen)
  }, [])
}
