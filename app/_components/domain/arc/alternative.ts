import { fallsShort, type PhaseView } from './phase-view'

function sayColumn(view: PhaseView): string {
  const name = view.critical ? `${view.label}, critical` : view.label
  const asked = view.expected > 0 ? `, asks ${view.expected}` : ''
  if (view.how === 'not watched' || view.rating === null) return `${name}: not watched${asked}`
  const criterion = view.criterion ? `${view.criterion}, ` : ''
  const rating = view.how === 'imputed' ? `${view.rating} as expected, not rated` : `${view.rating}`
  const short = fallsShort(view) ? ', falls short' : ''
  return `${name}: ${criterion}${rating}${asked}${short}`
}

/** What an arc or a rule shows, for those who do not see it: each column in order, with the criterion it shows. */
export const sayPhases = (phases: readonly PhaseView[]): string => `${phases.map(sayColumn).join('. ')}.`
