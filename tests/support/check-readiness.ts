import type { ReadinessCheck } from '../../lib/assessment/store/check-readiness'
import { checkAsOwner } from './check-as-owner'
import { readReadiness } from './rows'
import { coachAs, type SmallCoast } from './small-club'

/** Compares the readiness rows of a small coast with a fresh evaluation of its raw rows, as the console does. */
export async function checkReadinessAsOwner(coast: SmallCoast, at: number): Promise<ReadinessCheck> {
  // Divers without any row yet are read once, as the pages do.
  await readReadiness(await coachAs(coast, 'elsewhere', at))
  await readReadiness(await coachAs(coast, 'head', at))
  return checkAsOwner(coast.programme, at)
}
