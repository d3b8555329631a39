import { v7 as uuidv7 } from 'uuid'
import { asRole } from './database'
import { minute, type PersonKey, ratedAttempt, type SmallCoast, sendAs } from './small-club'

export const film = '/media/clips/101b-sound.webm'

/** An attempt of the diver who is here, rated by the assistant, with one moment in a film from 0.3 s to 2.6 s; its id. */
export async function filmedAttempt(coast: SmallCoast, at: number, link = film, who: PersonKey = 'assistant') {
  const id = uuidv7({ msecs: at })
  const dive = { diver: coast.divers.here, skill: '101C', place: '1m', at, ratings: { 'hands-locked': 3 } } as const
  const items = ratedAttempt(coast, dive).map((item) =>
    item.kind === 'observation' ? { ...item, moments: [{ id, link, start: 0.3, end: 2.6 }] } : item,
  )
  const answers = await sendAs(coast, who, at + 5 * minute, items)
  const refused = answers.find(({ result }) => result !== 'accepted')
  if (refused) throw new Error(refused.message)
  return id
}

/** Moves the diver who is here to the club there, from an instant on. */
export const moveDiver = ({ divers, clubs }: SmallCoast, at: number): Promise<void> =>
  asRole('owner', async (owner) => {
    const moved = new Date(at)
    await owner.query('UPDATE "DiverMembership" SET "to" = $2 WHERE "diverId" = $1', [divers.here, moved])
    await owner.query('INSERT INTO "DiverMembership" ("id", "diverId", "clubId", "from") VALUES ($1, $2, $3, $4)', [
      uuidv7(),
      divers.here,
      clubs.there,
      moved,
    ])
  })
