import type { Scope } from '../../access/scope'
import { asAccount } from '../../platform/db'

/** What was written about a signature, an attempt or a rating afterwards: by whom, when and why. */
export interface Afterwards {
  readonly by: string
  readonly at: number
  /** Null when the words were erased. */
  readonly reason: string | null
}

/** Of one diver: revocations by what they took back, releases by `kind id`, and why something was recognised, by its id. */
export interface Signatures {
  readonly revoked: ReadonlyMap<string, Afterwards>
  readonly released: ReadonlyMap<string, Afterwards>
  readonly recognised: ReadonlyMap<string, string>
}

/** Reads them for a diver in scope; of another one there is nothing to be seen. */
export function readSignatures(scope: Scope, diver: string): Promise<Signatures> {
  return asAccount(scope.account, async (tx) => {
    const about = { where: { diverId: diver } }
    const revocations = await tx.revocation.findMany(about)
    const releases = await tx.release.findMany(about)
    const recognitions = await tx.recognition.findMany({ ...about, select: { id: true, reasonId: true } })
    const ids = [...revocations, ...releases, ...recognitions].map(({ reasonId }) => reasonId)
    const texts = new Map((await tx.words.findMany({ where: { id: { in: ids } } })).map(({ id, text }) => [id, text]))
    const after = (row: { by: string; at: Date; reasonId: string }): Afterwards => {
      return { by: row.by, at: row.at.getTime(), reason: texts.get(row.reasonId) ?? null }
    }
    return {
      revoked: new Map(revocations.map((row) => [row.subjectId, after(row)])),
      released: new Map(releases.map((row) => [`${row.kind} ${row.subjectId}`, after(row)])),
      recognised: new Map(recognitions.map(({ id, reasonId }) => [id, texts.get(reasonId) ?? ''])),
    }
  })
}
