import type { Pointer } from '@/lib/curriculum/edition/pointer'
import { stepsOf } from '@/lib/curriculum/edition/pointer'
import type { EditionDocument } from '@/lib/curriculum/model'

function holder(copy: unknown, pointer: Pointer): { parent: object; last: string } {
  const steps = stepsOf(pointer)
  const last = steps.pop()
  const parent = steps.reduce<unknown>((value, step) => Reflect.get(Object(value), step), copy)
  if (last === undefined || typeof parent !== 'object' || parent === null) throw new RangeError(`nothing at ${pointer}`)
  return { parent, last }
}

/** A copy of the document in which the one value at `pointer` is another; throws RangeError when nothing holds it. */
export function withValue(document: EditionDocument, pointer: Pointer, value: unknown): EditionDocument {
  const copy = structuredClone(document)
  const { parent, last } = holder(copy, pointer)
  Reflect.set(parent, last, value)
  return copy
}

/** A copy of the document without the field, or the item of a list, at `pointer`. */
export function without(document: EditionDocument, pointer: Pointer): EditionDocument {
  const copy = structuredClone(document)
  const { parent, last } = holder(copy, pointer)
  if (Array.isArray(parent)) parent.splice(Number(last), 1)
  else Reflect.deleteProperty(parent, last)
  return copy
}
