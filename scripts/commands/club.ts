import { parseArgs } from 'node:util'
import { addClub } from '../../lib/access/store/clubs'
import { isZone } from '../../lib/assessment/time'
import { atConsole } from './console'
import { sayInvitation } from './invite-link'
import { understood } from './understood'

const usage = 'Usage: plumbline club NAME [--zone ZONE] [--for WHO]\n'

interface Asked {
  readonly name: string
  /** Null: the programme's own. */
  readonly zone: string | null
  readonly label: string
}

/** Throws an Error whose message says how the arguments are wrong. */
function parse(args: string[]): Asked {
  const { values, positionals } = parseArgs({
    args,
    allowPositionals: true,
    options: { zone: { type: 'string' }, for: { type: 'string' } },
  })
  const [name = ''] = positionals
  if (positionals.length !== 1 || !name.trim())
    throw new Error('name the club, in quotation marks when it has several words')
  if (values.zone !== undefined && !isZone(values.zone)) throw new Error(`"${values.zone}" is no IANA time zone`)
  return { name: name.trim(), zone: values.zone ?? null, label: values.for ?? 'whoever opens it' }
}

const add = ({ name, zone, label }: Asked): Promise<number> =>
  atConsole(async (scope) => {
    const club = await addClub(scope, { name, zone: zone ?? scope.zone })
    if (!club) {
      process.stderr.write(`There is a club of the name ${name} already.\n`)
      return 1
    }
    process.stdout.write(`${name} is added.\n${await sayInvitation(scope, { role: 'head', club }, label)}`)
    return 0
  })

/** `club NAME`: adds a club and invites its head coach. */
export const run = (args: string[]): Promise<number> => understood(usage, () => parse(args), add)
