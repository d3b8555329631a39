import type { Curriculum } from '../edition/curriculum'
import { prerequisiteGraph } from './cycles'
import type { TreeKey } from './target'

/** What names a target among its own conditions: pairs, levels and board moves, in the order of the document. */
export const listOpened = (curriculum: Curriculum, key: TreeKey): TreeKey[] =>
  [...prerequisiteGraph(curriculum)].filter(([, named]) => named.includes(key)).map(([target]) => target)
