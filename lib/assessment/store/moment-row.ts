import type { MomentItem } from '../deck/contract'
import { commitTo } from '../ledger/write-event'
import { wholeMilliseconds } from '../moment'
import { makeSalt } from './words'

/** A moment as the erasable table keeps it: its link with a salt, and the commitment that outlives both. */
export function momentRow({ id, link, start, end }: MomentItem) {
  const salt = makeSalt()
  const startMs = wholeMilliseconds(start)
  const endMs = end === null ? null : wholeMilliseconds(end)
  return { id, link, startMs, endMs, salt, commitment: commitTo(`${link}#${startMs},${endMs}`, salt) }
}
