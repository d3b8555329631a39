import type { PhaseView } from '@/lib/assessment/arc-subject'

/** Seen, and below what is asked. */
export const fallsShort = (view: PhaseView): boolean =>
  view.how === 'seen' && view.rating !== null && view.rating < view.expected

/** The one thing on a rule that is drawn in coral. */
export const fallsShortCritically = (view: PhaseView): boolean => view.showsCritical && fallsShort(view)
