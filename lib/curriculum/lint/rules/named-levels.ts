import { pairKey } from '../../edition/curriculum'
import { listOfKind } from '../../requirement/references'
import type { LintProblem, Rule } from '../problem'
import { nameOf } from '../subject'

/** Sign-offs asked for without a level, at a level above that of the asker, or below the one that teaches them. */
export const namedLevels: Rule = ({ curriculum, requirements }) =>
  requirements.flatMap(({ of, owner, level, path: root, requirement }) =>
    listOfKind(requirement, 'signOff', root).flatMap(({ node: leaf, path }): LintProblem[] => {
      const wanted = nameOf(leaf)
      if (leaf.atLevel === undefined) {
        if (of === 'level') return []
        const message = `${owner} asks for ${wanted} without a level; write atLevel, for a skill is held at one`
        return [{ code: 'no-level-named', path, message }]
      }
      const asked = curriculum.levelIndex(leaf.atLevel)
      const pair = curriculum.pairs.get(pairKey(leaf))
      if (asked < 0) return []
      if (level !== null && level >= 0 && asked > level) {
        const message = `${owner} asks for ${wanted} at level ${leaf.atLevel}, which comes later; ask for an earlier one`
        return [{ code: 'level-mismatch', path: `${path}/atLevel`, message }]
      }
      if (pair && asked < pair.level) {
        const message = `${owner} asks for ${wanted} at level ${leaf.atLevel}, but it is taught from ${pair.at.level} on; name that`
        return [{ code: 'level-mismatch', path: `${path}/atLevel`, message }]
      }
      return []
    }),
  )
