import { formatTenths } from '../../dives/difficulty'
import { pointerTo } from '../../edition/pointer'
import { entriesAt } from '../../event/entry'
import type { Event } from '../../event/model'
import { type WhyNoList, whyNoList } from '../../event/why-no-list'
import { placeFacts } from '../../place'
import type { LintProblem, Rule } from '../problem'

const problem = (index: number, steps: readonly PropertyKey[], message: string): LintProblem => ({
  code: 'no-legal-list',
  path: pointerTo('events', index, ...steps),
  message,
})

/** What the edition's dives leave wanting, with the field to mend. */
function unfilled(
  { key, place }: Event,
  why: WhyNoList,
): { readonly steps: readonly PropertyKey[]; readonly says: string } {
  const { label } = placeFacts[place]
  switch (why.kind) {
    case 'too few dives':
      return {
        steps: ['parts'],
        says: `${key} asks for ${why.wanted} different dives and this edition teaches ${why.held} at ${label}; ask for fewer`,
      }
    case 'too few families':
      return {
        steps: ['parts', why.part, 'distinctFamilies'],
        says: `${key} asks for dives of ${why.wanted} families and this edition teaches ${why.held} at ${label}; ask for fewer`,
      }
    case 'families shared':
      return {
        steps: ['parts'],
        says: `${key} has parts that can be filled one by one and not together, since no dive number stands twice; ask for fewer families`,
      }
    case 'over the cap':
      return {
        steps: ['parts', why.part, 'difficultyCap'],
        says: `no list fits the cap of ${key}: ${formatTenths(why.cap)} is allowed and the easiest dives come to ${formatTenths(why.least)}; raise it`,
      }
    case 'caps shared':
      return {
        steps: ['parts'],
        says: `${key} has caps that can be kept one by one and not together; raise one`,
      }
  }
}

function inEvent(event: Event, index: number): LintProblem[] {
  const { from, to } = event.ageBand
  const band =
    (from ?? 0) <= (to ?? Number.POSITIVE_INFINITY)
      ? []
      : [problem(index, ['ageBand', 'to'], `nobody is of age for ${event.key}: from ${from} to ${to}; swap them`)]
  const parts = event.parts.flatMap(({ count, distinctFamilies }, part): LintProblem[] => {
    if (distinctFamilies <= count) return []
    const message = `${event.key} asks for ${distinctFamilies} families in ${count} dives; ask for at most ${count}`
    return [problem(index, ['parts', part, 'distinctFamilies'], message)]
  })
  return [...band, ...parts]
}

/** Events that nobody can enter, whatever she holds: bands upside down, and caps that no legal list fits. */
export const events: Rule = ({ document, curriculum }) =>
  (document.events ?? []).flatMap((event, index) => {
    const wrong = inEvent(event, index)
    if (wrong.length > 0) return wrong
    return whyNoList(event.parts, entriesAt(curriculum, event.place)).map((why) => {
      const { steps, says } = unfilled(event, why)
      return problem(index, steps, says)
    })
  })
