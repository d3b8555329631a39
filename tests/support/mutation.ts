import type { Pointer } from '@/lib/curriculum/edition/pointer'
import { pointerTo } from '@/lib/curriculum/edition/pointer'
import type { Subject } from '@/lib/curriculum/lint/subject'
import type { EditionDocument } from '@/lib/curriculum/model'
import { without, withValue } from './edit-document'

/** One change to one place of a sound curriculum, after which a rule must speak. */
export interface Mutation {
  readonly what: string
  /** Makes the changed document; thousands of them would not fit into memory at once. */
  readonly make: () => EditionDocument
}
/** Every change of one kind to a sound curriculum. */
export type Mutate = (subject: Subject) => Mutation[]

/** One value is another. */
export const set = ({ document }: Subject, path: Pointer, value: unknown): Mutation => ({
  what: `${path} := ${JSON.stringify(value)?.slice(0, 60)}`,
  make: () => withValue(document, path, value),
})
/** A field, or an item of a list, is left out. */
export const drop = ({ document }: Subject, path: Pointer): Mutation => ({
  what: `${path} dropped`,
  make: () => without(document, path),
})

type List = 'skills' | 'criteria' | 'faults' | 'levels'
/** The changes to each item of a list. */
export const eachOf = <Name extends List>(
  { document }: Subject,
  list: Name,
  mutate: (item: EditionDocument[Name][number], path: Pointer, index: number) => Mutation[],
): Mutation[] => document[list].flatMap((item, index) => mutate(item, pointerTo(list, index), index))
