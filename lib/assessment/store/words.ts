import { randomBytes } from 'node:crypto'
import { v7 as uuidv7 } from 'uuid'
import type { Tx } from '../../platform/db'
import { commitTo } from '../ledger/write-event'

export interface Kept {
  readonly id: string
  /** Salted commitment: what append-only rows and the ledger hold instead of the words. */
  readonly commitment: string
}

/** A fresh salt: without it, and it goes with the words, a commitment cannot be tried against guesses. */
export const makeSalt = (): string => randomBytes(16).toString('hex')

interface About {
  readonly club: string
  readonly diver: string
  readonly writtenBy: string
  /** `head`: nobody but the head coaches of the diver's club reads them. By default whoever may read her record. */
  readonly readers?: 'all' | 'head'
}

/** The row of a note or a reason for the erasable table, for who writes several at once. */
export function makeWords(about: About, text: string) {
  const salt = makeSalt()
  const { club: clubId, diver: diverId, writtenBy, readers = 'all' } = about
  return { id: uuidv7(), commitment: commitTo(text, salt), clubId, diverId, writtenBy, readers, text, salt }
}

/** Keeps a note or a reason in the erasable table. */
export async function keepWords(tx: Tx, about: About, text: string): Promise<Kept> {
  const words = makeWords(about, text)
  // Without reading back: who writes for head coaches only need not be one.
  await tx.words.createMany({ data: [words] })
  return words
}
