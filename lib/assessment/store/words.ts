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
}

/** Keeps a note or a reason in the erasable table. */
export async function keepWords(tx: Tx, about: About, text: string): Promise<Kept> {
  const salt = makeSalt()
  const kept = { id: uuidv7(), commitment: commitTo(text, salt) }
  await tx.words.create({
    data: { ...kept, clubId: about.club, diverId: about.diver, writtenBy: about.writtenBy, text, salt },
  })
  return kept
}
