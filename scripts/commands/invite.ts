import { parseArgs } from 'node:util'
import type { Offer } from '../../lib/access/invite'
import { listClubs } from '../../lib/access/store/clubs'
import { atConsole } from './console'
import { sayInvitation } from './invite-link'
import { understood } from './understood'

const usage = 'Usage: plumbline invite --role lead|reviewer|head|assistant [--club NAME] [--for WHO]\n'

interface Asked {
  readonly role: Offer['role']
  readonly club: string | null
  readonly label: string
}

const roles: readonly string[] = ['lead', 'reviewer', 'head', 'assistant'] satisfies Offer['role'][]

/** Throws an Error whose message says how the arguments are wrong. */
function parse(args: string[]): Asked {
  const { values } = parseArgs({
    args,
    options: { role: { type: 'string' }, club: { type: 'string' }, for: { type: 'string' } },
  })
  if (!values.role || !roles.includes(values.role)) throw new Error(`say to what: --role ${roles.join('|')}`)
  const inClub = values.role === 'head' || values.role === 'assistant'
  if (inClub !== (values.club !== undefined))
    throw new Error(inClub ? 'name the club: --club NAME' : `a ${values.role} has no club: leave --club out`)
  return { role: values.role as Offer['role'], club: values.club ?? null, label: values.for ?? 'whoever opens it' }
}

const offer = ({ role, club: named, label }: Asked): Promise<number> =>
  atConsole(async (scope) => {
    const clubs = await listClubs(scope)
    const club = clubs.find(({ name }) => name.toLowerCase() === named?.toLowerCase())
    if (named !== null && !club) {
      process.stderr.write(`There is no club ${named}. There are: ${clubs.map(({ name }) => name).join(', ')}.\n`)
      return 1
    }
    process.stdout.write(await sayInvitation(scope, { role, club: club?.id ?? null } as Offer, label))
    return 0
  })

/** `invite --role ROLE`: prints a link that invites to a post or a role. */
export const run = (args: string[]): Promise<number> => understood(usage, () => parse(args), offer)
