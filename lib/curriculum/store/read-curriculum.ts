import type { Scope } from '../../access/scope'
import { asAccount } from '../../platform/db'
import type { Curriculum } from '../edition/curriculum'
import { getEditionInForce } from './editions'

/** The edition in force now, for reading. */
export const readCurriculum = (scope: Scope): Promise<Curriculum> =>
  asAccount(scope.account, (tx) => getEditionInForce(tx, scope))
