import type { Pointer } from '@/lib/curriculum/edition/pointer'
import { stepsOf } from '@/lib/curriculum/edition/pointer'
import type { EditionDocument } from '@/lib/curriculum/model'

type Change = (holder: object, last: string) => void

/** A copy along the way to the pointer; what lies beside it is shared, for a document is never written to. */
function edited<Value>(value: Value, pointer: Pointer, change: Change): Value {
  const steps = stepsOf(pointer)
  const last = steps.pop()
  if (last === undefined || typeof value !== 'object' || value === null) throw new RangeError(`nothing at ${pointer}`)
  const copy = shallow(value)
  let holder: object = copy
  for (const step of steps) {
    const next: unknown = Reflect.get(holder, step)
    if (typeof next !== 'object' || next === null) throw new RangeError(`nothing at ${pointer}`)
    const copied = shallow(next)
    Reflect.set(holder, step, copied)
    holder = copied
  }
  change(holder, last)
  return copy
}

const shallow = <Value extends object>(value: Value): Value =>
  Object.assign(Array.isArray(value) ? [] : {}, value) as Value

/** A copy of the document in which the one value at `pointer` is another; throws RangeError when nothing holds it. */
export const withValue = (document: EditionDocument, pointer: Pointer, value: unknown): EditionDocument =>
  edited(document, pointer, (holder, last) => Reflect.set(holder, last, value))

/** A copy of the document without the field, or the item of a list, at `pointer`. */
export const without = (document: EditionDocument, pointer: Pointer): EditionDocument =>
  edited(document, pointer, (holder, last) => {
    if (Array.isArray(holder)) holder.splice(Number(last), 1)
    else Reflect.deleteProperty(holder, last)
  })
