import { facetsOfSkill } from '../curriculum/edition/attach'
import type { Curriculum, Pair } from '../curriculum/edition/curriculum'
import { type PhaseSet, phaseSets, type Rating } from '../curriculum/model'
import type { SeenAttempt } from './attempt'
import { phaseView } from './phase-view'
import { expectedAt } from './verdict'

/** What one phase of an attempt (or of several) shows: one column of the rule. */
export interface PhaseView {
  readonly phase: string
  /** The phase as the programme writes it. */
  readonly label: string
  /** The criterion shown, in words; null when none of the phase was rated. */
  readonly criterion: string | null
  readonly rating: Rating | null
  /** 0 when the level asks nothing of this phase: no notch. */
  readonly expected: Rating
  readonly how: 'seen' | 'imputed' | 'not watched'
  /** The phase has a critical criterion: a double line under its column. */
  readonly critical: boolean
  /** The criterion shown is a critical one: only that can be a critical shortfall. */
  readonly showsCritical: boolean
}

/** The path that the arc draws of a pair: how it starts, turns and enters, and from what height. */
export interface ArcPath {
  readonly variant: PhaseSet
  /** Out over the water, or in towards the board. */
  readonly facing: 'out' | 'in'
  /** Which way the body turns over; null when it does not. */
  readonly turning: 'forwards' | 'backwards' | null
  readonly enters: 'head-first' | 'feet-first'
  /** A place key: a board or the poolside has a path, a dry place only the rule. */
  readonly height: string
}

/** What the arc draws of a pair and some attempts at it: which path, and a column for each phase. */
export interface ArcSubject extends ArcPath {
  readonly phases: readonly PhaseView[]
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** The path of a pair, from its facets; what a lead-up does not state follows from its phases. */
export function arcPath({ skill, holding }: Pair): ArcPath {
  const { facing, sense, halfSomersaults, enters } = facetsOfSkill(skill)
  return {
    variant: skill.phaseSet,
    facing: facing ?? 'out',
    turning: halfSomersaults === 0 ? null : (sense ?? null),
    enters: enters ?? (skill.phaseSet.endsWith('feet-first') ? 'feet-first' : 'head-first'),
    height: holding.place,
  }
}

/** The drawing of `attempts` (in dive order) at a level index; an unwatched phase shows the highest rating it asks. */
export function arcSubject(
  curriculum: Curriculum,
  pair: Pair,
  attempts: readonly SeenAttempt[],
  level: number,
): ArcSubject {
  const marks = phaseView(pair, attempts, level)
  const asked = (phase: string): Rating =>
    pair.criteria
      .filter(({ criterion }) => criterion.phase === phase)
      .reduce<Rating>((most, attached) => Math.max(most, expectedAt(attached, level)) as Rating, 0)
  return {
    ...arcPath(pair),
    phases: phaseSets[pair.skill.phaseSet].map((phase, index) => {
      const mark = marks[index]
      return {
        phase,
        label: capital(phase),
        criterion: mark?.criterion ? (curriculum.criteria.get(mark.criterion)?.title ?? null) : null,
        rating: mark?.rating ?? null,
        expected: mark?.criterion ? mark.expected : asked(phase),
        how: mark?.how ?? 'not watched',
        critical: pair.criteria.some(({ criterion }) => criterion.phase === phase && criterion.critical),
        showsCritical: mark?.critical ?? false,
      }
    }),
  }
}
