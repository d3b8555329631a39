import type { ArcSubject, PhaseView } from '@/lib/assessment/arc-subject'
import { heightOver } from './course'
import { fallsShort } from './falls-short'

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

const starts = { running: 'running', standing: 'standing', twister: 'running', 'fall-in': 'falling' } as const

/** The path of a dive in words: "Standing, facing the board, turning forwards with a twist, in head first." Empty for the rule alone. */
export function sayPath({ variant, facing, turning, enters, height }: Omit<ArcSubject, 'phases'>): string {
  if (variant === 'drill' || heightOver(height) === null) return ''
  const [first = ''] = variant.split(' ')
  const start = starts[first as keyof typeof starts]
  const turn = turning ? `turning ${turning}${variant.includes('twister') ? ' with a twist' : ''}, ` : ''
  const said = `${start}, facing ${facing === 'out' ? 'the water' : 'the board'}, ${turn}in ${enters.replace('-', ' ')}. `
  return said.charAt(0).toUpperCase() + said.slice(1)
}
