import type { Scope } from '@/lib/access/scope'
import { isAnswered, type Question, standingQuestions } from '@/lib/assessment/question'
import { sayAnswered, sayAsked, sayCorrected } from '@/lib/assessment/readiness/say-question'
import { dayName, pairName, type Words } from '@/lib/assessment/readiness/wording'
import type { AttemptFact } from '@/lib/assessment/record'
import { type DiverQuestions, listDiversAsked } from '@/lib/assessment/store/questions'
import { type Person, readDiver } from '@/lib/assessment/store/reads'
import { dayIn } from '@/lib/assessment/time'

/** Something said to a question: by whom and when, the words unless they were erased, and where the correction stands. */
export interface ReplyView {
  readonly id: string
  readonly sentence: string
  readonly text: string | null
  readonly href: string | null
}

/** A question about a moment, with what was said to it. */
export interface QuestionView {
  readonly id: string
  readonly moment: string
  /** The skill and the day of the dive. */
  readonly about: string
  /** The page of the moment; null while it is hidden, without consent to video. */
  readonly href: string | null
  readonly asked: string
  /** What is asked; null where the words were erased. */
  readonly text: string | null
  readonly replies: readonly ReplyView[]
  readonly answered: boolean
  /** Whether the reader asked it herself, and whether she is the one to answer. */
  readonly own: boolean
  readonly toAnswer: boolean
  /** Where she corrects what she rated; null once the deck keeps it no more, or for whoever did not rate it. */
  readonly correct: string | null
}

// As long as the deck offers a rating to be corrected (store/own-observations.ts).
const correctableDays = 7

/** What a question is said with: the diver's attempts, words and people, and who reads. */
export interface Asking {
  readonly diver: string
  readonly zone: string
  readonly attempts: readonly AttemptFact[]
  readonly questions: DiverQuestions
  readonly people: ReadonlyMap<string, Person>
  readonly words: Words
  readonly reader: string
  /** Moments that may be looked at. */
  readonly shown: ReadonlySet<string>
}

export function toQuestion(on: Asking, question: Question): QuestionView {
  const { asked, answers, correction } = question
  const { words, zone, people, questions } = on
  const fact = on.attempts.find(({ id }) => id === asked.attempt)
  const nameOf = (account: string | undefined) => people.get(account ?? '')?.name ?? 'a coach'
  const seen = fact?.observations.find(({ id }) => id === asked.observation)
  const rater = seen?.coach
  const fresh = seen && correction === null && dayIn(seen.receivedAt, zone) > words.today - correctableDays
  const corrected = fact?.observations.find(({ id }) => id === correction)
  const where = fact ? `/desk/divers/${on.diver}/${encodeURIComponent(fact.pair)}` : null
  return {
    id: asked.id,
    moment: asked.moment,
    about: fact ? `${pairName(fact.pair, words)}, ${dayName(fact.day, words)}` : 'a dive',
    href: on.shown.has(asked.moment) ? `/desk/moments/${asked.moment}` : null,
    asked: sayAsked(nameOf(asked.by), nameOf(rater), dayIn(asked.at, zone), words),
    text: questions.texts.get(asked.id) ?? null,
    replies: [
      ...answers.map(({ id, by, at }) => ({
        id,
        sentence: sayAnswered(nameOf(by), dayIn(at, zone), words),
        text: questions.texts.get(id) ?? null,
        href: null,
      })),
      ...(corrected
        ? [
            {
              id: corrected.id,
              sentence: sayCorrected(nameOf(corrected.coach), dayIn(corrected.receivedAt, zone), words),
              text: null,
              href: where,
            },
          ]
        : []),
    ],
    answered: isAnswered(question),
    own: asked.by === on.reader,
    toAnswer: rater === on.reader,
    correct: fresh && rater === on.reader ? `/deck#/seen/${asked.observation}` : null,
  }
}

/** The questions about a diver in scope that stand, with the words for them; none where she is out of it. */
async function listStanding(scope: Scope, diver: string): Promise<{ name: string; views: QuestionView[] }> {
  const desk = await readDiver(scope, diver)
  if (!desk) return { name: '', views: [] }
  const { file, questions, people, curriculum, moments } = desk
  const { attempts } = file.record
  const asking: Asking = {
    ...{ diver, zone: file.zone, attempts, questions, people, reader: scope.account },
    words: { curriculum, today: dayIn(scope.at, file.zone) },
    shown: new Set(moments.map(({ id }) => id)),
  }
  const views = standingQuestions(questions, attempts).map((question) => toQuestion(asking, question))
  return { name: file.givenName, views }
}

/** The questions about one moment of a diver that stand, under any id of it. */
export const listQuestionsOn = async (
  scope: Scope,
  diver: string,
  copies: readonly string[],
): Promise<QuestionView[]> => (await listStanding(scope, diver)).views.filter((view) => copies.includes(view.moment))

/** The questions that stand about what the reader rated, of all divers of her clubs; what waits for her answer first. */
export async function listQuestionsToAnswer(scope: Scope): Promise<QuestionView[]> {
  const views: QuestionView[] = []
  for (const diver of await listDiversAsked(scope)) {
    const standing = await listStanding(scope, diver)
    views.push(...standing.views.map((view) => ({ ...view, about: `${standing.name}: ${view.about}` })))
  }
  return views.filter(({ toAnswer }) => toAnswer).sort((a, b) => Number(a.answered) - Number(b.answered))
}
