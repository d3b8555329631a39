import { type EpochDay, parseDay } from './time'

/** A diver as a head coach types her. */
export interface NewDiver {
  readonly givenName: string
  readonly familyName: string
  /** Null when it is not known. */
  readonly born: EpochDay | null
  readonly twistingSide: 'left' | 'right' | null
  readonly hurdleLeg: 'left' | 'right' | null
}

/** What is wrong with one line, with what to do about it. Lines are counted from 1, empty ones too. */
export interface LineProblem {
  readonly line: number
  readonly message: string
}

/** Every line as a diver, or all that is wrong. */
export type DiverLines =
  | { readonly ok: true; readonly divers: readonly NewDiver[] }
  | { readonly ok: false; readonly problems: readonly LineProblem[] }

/** A name is as long as a name: longer, and something else was pasted. */
const longestName = 80
/** Years: nobody is entered as a diver who is older. */
const oldest = 100

/** Why a birth date cannot be, as a sentence; null when it can. */
export function refuseBirth(born: EpochDay, today: EpochDay): string | null {
  if (born > today) return 'the birth date lies in the future'
  return today - born > oldest * 366 ? 'the birth date is too long ago' : null
}

function readBirth(text: string, today: EpochDay): EpochDay | string {
  try {
    const born = parseDay(text)
    return refuseBirth(born, today) ?? born
  } catch (error) {
    return error instanceof RangeError ? error.message : `"${text}" is not a date`
  }
}

const sides = { l: 'left', left: 'left', r: 'right', right: 'right', '': null } as const
const isSide = (text: string): text is keyof typeof sides => Object.hasOwn(sides, text)

function readLine(text: string, today: EpochDay): NewDiver | string {
  const parts = text.split(/[,;\t]/).map((part) => part.trim().replace(/\s+/g, ' '))
  const [givenName = '', familyName = '', birth = '', twist = '', leg = '', ...more] = parts
  if (more.length > 0)
    return 'there are more than five parts; write given name, family name, birth date, twisting side, hurdle leg'
  if (!givenName || !familyName) return 'write a given and a family name with a comma between them'
  if (givenName.length > longestName || familyName.length > longestName)
    return `a name has more than ${longestName} letters`
  const born = birth === '' ? null : readBirth(birth, today)
  if (typeof born === 'string') return born
  const [side, hurdle] = [twist.toLowerCase(), leg.toLowerCase()]
  if (!isSide(side)) return `"${twist}" is no twisting side; write left or right`
  if (!isSide(hurdle)) return `"${leg}" is no hurdle leg; write left or right`
  return { givenName, familyName, born, twistingSide: sides[side], hurdleLeg: sides[hurdle] }
}

/** A diver is told from another by her names and birth date. */
const sameDiver = (diver: NewDiver): string =>
  `${diver.givenName} ${diver.familyName} ${diver.born ?? ''}`.toLowerCase()

/**
 * Reads one diver a line: `given, family, 2014-05-01, left, right`, of which the date and what follows may be missing;
 * commas, semicolons or tabs part them, as a spreadsheet pastes them. All lines or none.
 */
export function readDiverLines(text: string, today: EpochDay): DiverLines {
  const problems: LineProblem[] = []
  const divers: NewDiver[] = []
  const seen = new Map<string, number>()
  for (const [index, raw] of text.split(/\r?\n/).entries()) {
    if (raw.trim() === '') continue
    const line = index + 1
    const read = readLine(raw, today)
    if (typeof read === 'string') {
      problems.push({
        line,
        message: `Line ${line}: ${read}.`,
      })
      continue
    }
    const twin = seen.get(sameDiver(read))
    if (twin !== undefined) problems.push({ line, message: `Line ${line}: it says the same as line ${twin}.` })
    seen.set(sameDiver(read), line)
    divers.push(read)
  }
  if (problems.length === 0 && divers.length === 0) problems.push({ line: 1, message: 'There is no diver in it yet.' })
  return problems.length > 0 ? { ok: false, problems } : { ok: true, divers }
}
