import type { PairKey } from '@/lib/curriculum/edition/curriculum'

/** Where the deck is. It lives in the hash, so that the phone's back button works and the shell stays one page. */
export type Route =
  | { readonly at: 'squads' }
  | { readonly at: 'diver'; readonly diver: string }
  | { readonly at: 'rate' | 'more'; readonly diver: string; readonly pair: PairKey }
  | { readonly at: 'plan'; readonly squad: string }
  | { readonly at: 'seen' }
  | { readonly at: 'correct' | 'correct more'; readonly observation: string }
  | { readonly at: 'unsent' }
  | { readonly at: 'mend' | 'mend more'; readonly item: string }

const squads: Route = { at: 'squads' }

/** `skill@place` or null; whether the edition has it is the screen's question. */
const asPair = (text: string): PairKey | null => (/^[^@]+@[^@]+$/.test(text) ? (text as PairKey) : null)

function decode(part: string): string {
  try {
    return decodeURIComponent(part)
  } catch {
    return part
  }
}

/** Reads a location hash; what it does not know leads to the squads. */
export function readRoute(hash: string): Route {
  const [first = '', second, third, fourth] = hash
    .replace(/^#?\/?/, '')
    .split('/')
    .map(decode)
  if (first === 'diver' && second) {
    const pair = third ? asPair(third) : null
    return pair ? { at: fourth === 'more' ? 'more' : 'rate', diver: second, pair } : { at: 'diver', diver: second }
  }
  if (first === 'plan' && second) return { at: 'plan', squad: second }
  if (first === 'seen')
    return second ? { at: third === 'more' ? 'correct more' : 'correct', observation: second } : { at: 'seen' }
  if (first === 'unsent')
    return second ? { at: third === 'more' ? 'mend more' : 'mend', item: second } : { at: 'unsent' }
  return squads
}

/** The hash of a route; `readRoute` reads it back. */
export function writeRoute(route: Route): string {
  const path = (...parts: string[]) => `#/${parts.map(encodeURIComponent).join('/')}`
  switch (route.at) {
    case 'squads':
      return '#/'
    case 'diver':
      return path('diver', route.diver)
    case 'rate':
      return path('diver', route.diver, route.pair)
    case 'more':
      return path('diver', route.diver, route.pair, 'more')
    case 'plan':
      return path('plan', route.squad)
    case 'seen':
      return path('seen')
    case 'correct':
      return path('seen', route.observation)
    case 'correct more':
      return path('seen', route.observation, 'more')
    case 'unsent':
      return path('unsent')
    case 'mend':
      return path('unsent', route.item)
    case 'mend more':
      return path('unsent', route.item, 'more')
  }
}
