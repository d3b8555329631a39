import { readSquads } from '@/lib/access/store/squads'
import { type Evaluation, evaluationOf } from '@/lib/assessment/readiness/evaluation'
import { levelName, pairName, stepName, targetName, type Words } from '@/lib/assessment/readiness/wording'
import { type Recognisable, recognisedKey, refuseRecognition } from '@/lib/assessment/recognise'
import { type Desk, readDesk } from '@/lib/assessment/store/reads'
import { levelTarget, moveTarget, targetHold } from '@/lib/assessment/target-hold'
import { asOfInstant } from '@/lib/assessment/time'
import type { Curriculum } from '@/lib/curriculum/edition/curriculum'
import { placeFacts, places } from '@/lib/curriculum/place'
import { type Headed, loadHeaded } from '../people/loader'

/** A tick box, or the word that stands in its place. */
export interface Cell {
  readonly diver: string
  readonly name: string
  readonly word: string | null
  readonly href: string | null
}

export interface GridRow {
  readonly key: string
  readonly place: string
  readonly dive: string | null
  readonly title: string
  readonly cells: readonly Cell[]
}

interface Option {
  readonly key: string
  readonly label: string
}

export interface RecognisePage extends Omit<Headed, 'actor' | 'scope'> {
  readonly squads: readonly Option[]
  readonly squad: string
  readonly families: readonly Option[]
  readonly family: string
  readonly levels: readonly Option[]
  readonly level: string
  readonly levelTitle: string
  readonly divers: readonly { readonly id: string; readonly name: string; readonly href: string }[]
  readonly rows: readonly GridRow[]
}

interface DiverNow {
  readonly id: string
  readonly name: string
  readonly evaluation: Evaluation
  readonly words: Words
}

/** How something that was signed, recognised or decided here stands, with the recognition to look at. */
function standingOf(evaluation: Evaluation, what: Recognisable): { word: string; href: string | null } {
  const link = (id: string) => `/desk/recognise/${id}`
  if (what.kind === 'holding') {
    const { state, by } = evaluation.holdings.of(what.pair)
    return {
      word: state === 'current' ? 'held' : state,
      href: by?.kind === 'recognition' ? link(by.id) : null,
    }
  }
  const target = what.kind === 'level' ? levelTarget(what.level) : moveTarget(what)
  const hold = targetHold(evaluation.curriculum, evaluation.record, target)
  if (hold.kind === 'recognised') return { word: 'recognised', href: link(hold.recognition.id) }
  return { word: hold.kind === 'none' ? 'taken back' : hold.kind, href: null }
}

function toCell({ id, name, evaluation, words }: DiverNow, what: Recognisable): Cell {
  const refusal = refuseRecognition(evaluation, what, words)
  if (!refusal) return { diver: id, name, word: null, href: null }
  if (refusal.code === 'signed before') return { diver: id, name, ...standingOf(evaluation, what) }
  return { diver: id, name, word: refusal.code === 'blocked' ? 'closed' : refusal.code, href: null }
}

type What = Omit<GridRow, 'cells'> & { readonly what: Recognisable }

/** The skills of a family that are taught up to a level, place by place, then the levels up to it and the family's moves. */
function listWhats(curriculum: Curriculum, family: string, level: string, words: Words): What[] {
  const index = curriculum.levelIndex(level)
  const taught = [...curriculum.pairs.values()].filter((pair) => pair.skill.family === family && pair.level <= index)
  const holdings = places.flatMap((place) =>
    taught
      .filter((pair) => pair.holding.place === place)
      .map((pair) => ({
        what: { kind: 'holding', pair: pair.key, level } as const,
        place: placeFacts[place].label,
        dive: pair.skill.dive,
        title: pair.skill.title,
      })),
  )
  const levels = curriculum.levels.slice(0, index + 1).map(({ key, title }) => ({
    what: { kind: 'level', level: key } as const,
    place: 'level',
    dive: null,
    title,
  }))
  const moves = curriculum.boardMoves
    .filter((move) => move.family === family)
    .map((move) => ({
      what: { kind: 'boardMove', family: move.family, to: move.to } as const,
      place: 'board move',
      dive: null,
      title: targetName(moveTarget(move), words),
    }))
  return [...holdings, ...levels, ...moves].map((one) => ({ ...one, key: recognisedKey(one.what) }))
}

function toDivers({ curriculum, files }: Desk, club: string, at: number, among: readonly string[]): DiverNow[] {
  return files
    .filter((file) => file.club === club && among.includes(file.id))
    .sort((a, b) => a.givenName.localeCompare(b.givenName, 'en') || a.familyName.localeCompare(b.familyName, 'en'))
    .map((file) => {
      const date = asOfInstant(at, file.zone)
      return {
        id: file.id,
        name: `${file.givenName} ${file.familyName}`,
        evaluation: evaluationOf(curriculum, file.record, date),
        words: { curriculum, today: date.day, diver: file.givenName },
      }
    })
}

const pick = (options: readonly Option[], asked: string | string[] | undefined, fallback = 0): string =>
  options.find(({ key }) => key === asked)?.key ?? options[fallback]?.key ?? ''

/** The grid: a squad's divers across, what a family teaches up to a level down, and where each stands already. */
export async function loadRecognise(query: Record<string, string | string[] | undefined>): Promise<RecognisePage> {
  const { scope, club, choice } = await loadHeaded('/desk/recognise', query.club)
  const desk = await readDesk(scope)
  const { squads, divers } = await readSquads(scope, club.club)
  const { curriculum } = desk
  const groups = [
    ...squads.map((squad) => ({ key: squad.id, label: squad.name, divers: squad.divers })),
    { key: 'all', label: `all of ${club.clubName}`, divers: divers.map(({ id }) => id) },
  ]
  const families = [...new Set(curriculum.document.skills.map((skill) => skill.family))]
  const familyOptions = families.map((key) => ({ key, label: key }))
  const levels = curriculum.levels.map(({ key, title }) => ({ key, label: title }))
  const [squad, family, level] = [
    pick(groups, query.squad),
    pick(familyOptions, query.family),
    pick(levels, query.level),
  ]
  const among = groups.find(({ key }) => key === squad)?.divers ?? []
  const present = toDivers(desk, club.club, scope.at, among)
  const words = { curriculum, today: asOfInstant(scope.at, club.zone).day }
  return {
    club,
    choice,
    squads: groups,
    squad,
    families: familyOptions,
    family,
    levels,
    level,
    levelTitle: levelName(level, words),
    divers: present.map(({ id, name }) => ({ id, name, href: `/desk/divers/${id}` })),
    rows: listWhats(curriculum, family, level, words).map(({ what, ...row }) => ({
      ...row,
      cells: present.map((diver) => toCell(diver, what)),
    })),
  }
}

/** What a recognition is of, in words. */
export const sayRecognised = (what: Recognisable, words: Pick<Words, 'curriculum'>): string =>
  what.kind === 'holding'
    ? `${pairName(what.pair, words)}, as of ${levelName(what.level, words)}`
    : stepName(what.kind === 'level' ? levelTarget(what.level) : moveTarget(what), words)
