import { openState } from '../../lib/assessment/open'
import { evaluationOf } from '../../lib/assessment/readiness/evaluation'
import { focus } from '../../lib/assessment/readiness/focus'
import { remaining } from '../../lib/assessment/readiness/remaining'
import { listTargets } from '../../lib/assessment/readiness/targets'
import { readDiver } from '../../lib/assessment/store/reads'
import { readReview } from '../../lib/assessment/store/review'
import { readSnapshot } from '../../lib/assessment/store/snapshot'
import { readStandings } from '../../lib/assessment/store/standings'
import { asOfInstant } from '../../lib/assessment/time'
import { placeDiver } from '../../lib/reports/pathway'
import { readLeavers } from '../../lib/reports/store/leavers'
import { coachScope, officeScope } from '../../seed/demo/hands'
import { fixedNow, today } from '../../seed/demo/season'
import { time } from './times'

/** The pages of a day on which everybody has just trained: the first reading works all readiness out, the others read it. */
export async function timePages(): Promise<void> {
  const office = await officeScope('constance', fixedNow)
  const head = await coachScope('marguerite', fixedNow)
  const began = performance.now()
  const { divers } = await readStandings(office)
  const first = (performance.now() - began).toFixed(0)
  process.stdout.write(`${`readiness of all ${divers.length} divers worked out`.padEnd(44)} ${first} ms, once\n`)
  await time('region', 20, async () => {
    const { curriculum, divers } = await readStandings(office)
    await readLeavers(office)
    return divers.map((diver) => placeDiver(curriculum, diver, today))
  })
  const headed = head.clubs ?? []
  const cold = performance.now()
  const { divers: reviewed } = await readReview(head, headed)
  const lists = (performance.now() - cold).toFixed(0)
  process.stdout.write(
    `${`lists of a head coach of ${reviewed.length} divers`.padEnd(44)} ${lists} ms, the first time\n`,
  )
  await time('lists of a head coach, again', 20, () => readReview(head, headed))
  await time('a diver', 30, async (run) => {
    const diver = divers[(run + 1) % divers.length]
    const desk = diver && (await readDiver(office, diver.id))
    if (!desk) throw new Error('the bench lost a diver')
    const evaluation = evaluationOf(desk.curriculum, desk.file.record, asOfInstant(fixedNow, desk.file.zone))
    const targets = listTargets(desk.curriculum)
    for (const target of targets) remaining(evaluation, target)
    for (const pair of desk.curriculum.pairs.keys()) openState(evaluation, pair)
    return focus(evaluation, targets)
  })
  await time('what the deck shows', 5, () => readSnapshot(head, 'Marguerite'))
}
