import { Fragment } from 'react'
import { DiveNumber } from '@/app/_components/domain/dive/dive-number'

interface SkillLineProps {
  readonly skill: {
    readonly dive: string | null
    readonly title: string
    readonly at: readonly { readonly href: string; readonly place: string; readonly level: string }[]
  }
}

/** A skill, and each place where it is taught with the level that teaches it there. */
export function SkillLine({ skill }: SkillLineProps) {
  return (
    <li className="py-1">
      {skill.dive ? <DiveNumber>{skill.dive}</DiveNumber> : null} {skill.title}
      <span className="text-13 text-soft">
        {skill.at.map(({ href, place, level }) => (
          <Fragment key={href}>
            {' '}
            <span className="whitespace-nowrap">
              ·{' '}
              <a href={href} aria-label={`${place}, ${skill.dive ?? ''} ${skill.title}, ${level}`}>
                {place}
              </a>{' '}
              {level}
            </span>
          </Fragment>
        ))}
      </span>
    </li>
  )
}
