import type { Shows } from '../../lib/assessment/exemplar'
import { nameExemplar } from '../../lib/assessment/store/exemplars'
import { findMoment } from '../../lib/assessment/store/moments'
import { recordConsent } from '../../lib/assessment/store/record-consent'
import { formatDay } from '../../lib/assessment/time'
import type { PairKey } from '../../lib/curriculum/edition/curriculum'
import { asAccount } from '../../lib/platform/db'
import { coast } from './bootstrap'
import { chanceOf } from './chance'
import { type ClubKey, clubs, squads } from './coast'
import { coachScope, require } from './hands'
import { instantOn, today } from './season'
import { stories } from './stories/stories'
import { squadOn } from './stories/story'

/** A film of a drawn dive that a club's head coach names, and how far the consent that she asked for reaches. */
interface Told {
  readonly club: ClubKey
  readonly pair: PairKey
  /** Name of the clip. */
  readonly clip: string
  readonly shows: Shows
  readonly reach: 'club' | 'programme'
}

const criterion = (key: string, level: string): Shows => ({ kind: 'criterion', criterion: key, level })
const fault = (key: string): Shows => ({ kind: 'fault', fault: key })

const told: readonly Told[] = [
  {
    club: 'saltmarsh',
    pair: '101B@1m',
    clip: '101b-sound',
    shows: criterion('closed-pike', 'reach'),
    reach: 'programme',
  },
  { club: 'saltmarsh', pair: '101B@1m', clip: '101b-arms-short', shows: fault('arms-short'), reach: 'club' },
  {
    club: 'northquay',
    pair: '401B@1m',
    clip: '401b-sound',
    shows: criterion('hips-rise-away', 'traverse'),
    reach: 'programme',
  },
  { club: 'northquay', pair: '401B@1m', clip: '401b-open-pike', shows: fault('open-pike'), reach: 'programme' },
  {
    club: 'northquay',
    pair: '201A@1m',
    clip: '201a-1m-sound',
    shows: criterion('line-at-water', 'reach'),
    reach: 'club',
  },
  {
    club: 'harrow-point',
    pair: '101B@1m',
    clip: '101b-sound',
    shows: criterion('hands-locked', 'plumb'),
    reach: 'programme',
  },
]

const minute = 60_000

/** The divers of a club today of whom video may be kept, in the order of the stories. */
const diversOf = (club: ClubKey): string[] =>
  stories
    .filter((story) => !story.consentsMissing)
    .filter((story) => squads.find(({ key }) => key === squadOn(story, formatDay(today)))?.club === club)
    .map(({ key }) => coast.diver(key))

/** At the season's end head coaches ask for consents and name what their divers show well, and what goes wrong. */
export async function tellExemplars(): Promise<void> {
  const asked = new Set<string>()
  for (const [index, { club, pair, clip, shows, reach }] of told.entries()) {
    const head = clubs.find(({ key }) => key === club)?.head
    if (!head) throw new Error(`the demo has no club ${club}`)
    const at = instantOn(today, 16) + index * 5 * minute
    const scope = await coachScope(head, at)
    const link = `/media/clips/${clip}.webm`
    const moments = await asAccount(scope.account, (tx) =>
      tx.moment.findMany({ where: { link, diverId: { in: diversOf(club) } }, orderBy: { id: 'desc' } }),
    )
    // A diver each: what is shown of one is not more than she was asked for. Where nobody dived it, nothing is named.
    const fresh = moments.filter(({ diverId }) => !asked.has(diverId))
    const files = await Promise.all(fresh.slice(0, 20).map(({ id }) => findMoment(scope, id)))
    const moment = fresh.find((_, at) => files[at]?.pair === pair)
    if (!moment) continue
    asked.add(moment.diverId)
    const consent = { diver: moment.diverId, purpose: 'exemplar', given: true, reach } as const
    const saidBy = 'A parent and the diver, in writing'
    require(`the consent to ${clip}`, await recordConsent(scope, { ...consent, saidBy }))
    const later = await coachScope(head, at + minute)
    const id = chanceOf('exemplar', club, clip).id(at + minute)
    require(`the exemplar ${clip}`, await nameExemplar(later, { moment: moment.id, shows }, id))
  }
}
