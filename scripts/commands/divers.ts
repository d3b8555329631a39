import { parseArgs } from 'node:util'
import { readDesk } from '../../lib/assessment/store/reads'
import { atConsole } from './console'
import { toTable } from './to-table'
import { understood } from './understood'

const usage = 'Usage: plumbline divers [--json]\n'

async function list({ json }: { readonly json: boolean }): Promise<number> {
  const { files } = await atConsole(readDesk)
  const divers = files
    .map(({ id, givenName, familyName, clubName, squads }) => ({
      id,
      name: `${givenName} ${familyName}`,
      club: clubName,
      squads,
    }))
    .sort((a, b) => a.club.localeCompare(b.club) || a.name.localeCompare(b.name))
  const rows = divers.map(({ id, name, club, squads }) => [id, name, club, squads.join(', ')])
  process.stdout.write(
    json ? `${JSON.stringify(divers, null, 2)}\n` : toTable([['id', 'name', 'club', 'squads'], ...rows]),
  )
  return 0
}

/** `divers [--json]`: every diver of the programme with id, club and squads. */
export const run = (args: string[]): Promise<number> =>
  understood(usage, () => parseArgs({ args, options: { json: { type: 'boolean', default: false } } }).values, list)
