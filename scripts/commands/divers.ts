import { parseArgs } from 'node:util'
import { readDesk } from '../../lib/assessment/store/reads'
import { atConsole } from './console'
import { toTable } from './to-table'

/** `divers [--json]`: every diver of the programme with id, club and squads. */
export async function run(args: string[]): Promise<number> {
  let json: boolean
  try {
    json = parseArgs({ args, options: { json: { type: 'boolean', default: false } } }).values.json
  } catch (error) {
    process.stderr.write(
      `${error instanceof Error ? error.message : String(error)}\nUsage: plumbline divers [--json]\n`,
    )
    return 2
  }
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
