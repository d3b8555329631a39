import { DiveNumber } from '@/app/_components/domain/dive/dive-number'
import { StatusDrop } from '@/app/_components/domain/status/status-drop'
import { Fold } from '@/app/_components/ui/fold'
import type { Status } from '@/lib/assessment/readiness/finding'
import type { SkillView } from '../loader'

const drop: Record<SkillView['state'], Status> = {
  held: 'met',
  recognised: 'unproven',
  'to sign': 'unproven',
  open: 'unproven',
  closed: 'unproven',
  'in doubt': 'lapsed',
  lapsed: 'lapsed',
}

/** Skills at one place: held, to sign, open or closed, and of a closed one by what. */
export function SkillList({ skills }: { skills: readonly SkillView[] }) {
  return (
    <ul className="grid gap-x-8 lg:grid-cols-2">
      {skills.map((skill) => (
        <li key={skill.href} className="flex gap-2 py-1">
          <StatusDrop status={drop[skill.state]} />
          <div>
            <a href={skill.href} className={skill.state === 'closed' ? 'text-soft' : ''}>
              {skill.dive ? (
                <>
                  <DiveNumber>{skill.dive}</DiveNumber> {skill.name}
                </>
              ) : (
                skill.name
              )}
            </a>{' '}
            <span className="text-13 text-soft">{skill.state}</span>
            {skill.because ? <p className="text-13 text-soft">{skill.because}</p> : null}
          </div>
        </li>
      ))}
    </ul>
  )
}

const order = ['to sign', 'in doubt', 'lapsed', 'open', 'held', 'recognised', 'closed'] as const

/** The skills of one place folded behind their counts, what can be dived before what is closed. */
export function PlaceSkills({ skills }: { skills: readonly SkillView[] }) {
  const groups = order
    .map((state) => skills.filter((skill) => skill.state === state))
    .filter((group) => group.length > 0)
  return (
    <Fold summary={groups.map((group) => `${group.length} ${group[0]?.state}`).join(' · ')}>
      <SkillList skills={groups.flat()} />
    </Fold>
  )
}
