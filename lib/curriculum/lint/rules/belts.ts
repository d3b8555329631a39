import { placeFacts } from '../../place'
import { listNodes } from '../../requirement/references'
import type { LintProblem, Rule } from '../problem'
import type { WrittenPair } from '../subject'

const namesSpotter = (text: string | undefined): boolean =>
  /\btrained\b/i.test(text ?? '') && /\bspotter\b/i.test(text ?? '')

const spotted = ({ pair }: WrittenPair): boolean =>
  pair.criteria.some(({ criterion }) => criterion.critical && namesSpotter(criterion.statement)) ||
  (pair.at.prerequisite !== null && listNodes(pair.at.prerequisite).some(({ node }) => namesSpotter(node.reason)))

/** Belt work for which neither a critical criterion nor the reason of a requirement names a trained spotter. */
export const belts: Rule = ({ pairs }) =>
  pairs
    .filter((written) => placeFacts[written.pair.at.place].belt && !spotted(written))
    .map(({ name, path }): LintProblem => {
      const message = `${name} is belt work, and nothing asks for a trained spotter; add a critical criterion that does`
      return { code: 'belt-without-spotter', path, message }
    })
