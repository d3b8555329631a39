import { v7 as uuidv7 } from 'uuid'
import type { Newcomer } from '../invite'
import { hashPassword } from './password'

/** Gives a newcomer an id and hashes her password. Writes nothing. */
export async function prepareAccount({
  password,
  ...words
}: Omit<Newcomer, 'id' | 'passwordHash'> & { readonly password: string }): Promise<Newcomer> {
  return { id: uuidv7(), ...words, passwordHash: await hashPassword(password) }
}
