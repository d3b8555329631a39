import { parseArgs } from 'node:util'
import type { Offer } from '../../lib/access/invite'
import { listClubs } from '../../lib/access/store/clubs'
import { atConsole } from './console'
import { sayInvitation } from './invite-link'

const usage = 'Usage: plumbline invite --role lead|reviewer|head|assistant [--club NAME] [--for WHO]\n'

interface Asked {
  readonly role: Offer['role']
  readonly club: string | null
  readonly label: string
}

const roles: readonly string[] = ['lead', 'reviewer', 'head', 'assistant'] satisfies Offer['role'][]

function parse(args: string[]): Asked | string {
  try {
    const { values } = parseArgs({
      args,
      options: { role: { type: 'string' }, club: { type: 'string' }, for: { type: 'string' } },
    })
    if (!values.role || !roles.includes(values.role)) return `say to what: --role ${roles.join('|')}`
    const inClub = values.role === 'head' || values.role === 'assistant'
    if (inClub !== (values.club !== undefined))
      return inClub ? 'name the club: --club NAME' : `a ${values.role} has no club: leave --club out`
    return { role: values.role as Offer['role'], club: values.club ?? null, label: values.for ?? 'whoever opens it' }
  } catch (error) {
    return error instanceof Error ? error.message : String(error)
  }
}

/** `invite --role ROLE`: prints a link that invites to a post or a role. */
export async function run(args: string[]): Promise<number> {
  const asked = parse(args)
  if (typeof asked === 'string') {
    process.stderr.write(`${asked}\n${usage}`)
    return 2
  }
  return atConsole(async (scope) => {
    const clubs = await listClubs(scope)
    const club = clubs.find(({ name }) => name.toLowerCase() === asked.club?.toLowerCase())
    if (asked.club !== null && !club) {
      process.stderr.write(`There is no club ${asked.club}. There are: ${clubs.map(({ name }) => name).join(', ')}.\n`)
      return 1
    }
    const offer = { role: asked.role, club: club?.id ?? null } as Offer
    process.stdout.write(await sayInvitation(scope, offer, asked.label))
    return 0
  })
}
