import { hash, verify } from '@node-rs/argon2'

// OWASP's minimum for argon2id: 19 MiB, two passes, one lane.
const cost = { memoryCost: 19_456, timeCost: 2, parallelism: 1 }

/** A stored form of a password (argon2id, PHC string). */
export const hashPassword = (password: string): Promise<string> => hash(password, cost)

/** Compared against when there is no such account, so that an unknown address takes as long as a wrong password. */
let decoy: Promise<string> | undefined

/** Whether the password fits; `stored` null never fits, in the same time. */
export async function passwordFits(password: string, stored: string | null): Promise<boolean> {
  decoy ??= hashPassword('no account has this password')
  const fits = await verify(stored ?? (await decoy), password)
  return stored !== null && fits
}
