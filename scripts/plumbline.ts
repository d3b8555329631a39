import path from 'node:path'

/** What a file in commands/ exports. */
interface Command {
  /** How it is used, for `--help`. */
  readonly help?: string
  /** Answers the exit code: 0, 1 when the answer is bad news, 2 for bad usage. Only the answer goes to stdout. */
  readonly run: (args: string[]) => Promise<number>
}

const commands: Record<string, { usage: string; does: string }> = {
  dive: {
    usage: 'dive NUMBER… [--height 1|3] [--json]',
    does: 'Name, difficulty and facets of dives by their number and position. Exit code 1 when any is refused.',
  },
  lint: {
    usage: 'lint PATH [--json]',
    does: 'Checks a curriculum folder or edition file and names each finding with its place. Exit code 1 when there are any.',
  },
  programme: {
    usage: 'programme NAME --zone ZONE [--curriculum PATH] [--for WHO]',
    does: 'Begins a programme of your own in an empty database, without the demo: publishes a curriculum (of this folder, by default the one in seed/curriculum) and prints the link that invites its lead.',
  },
  club: {
    usage: 'club NAME [--zone ZONE] [--for WHO]',
    does: 'Adds a club, and prints the link that invites its head coach.',
  },
  invite: {
    usage: 'invite --role lead|reviewer|head|assistant [--club NAME] [--for WHO]',
    does: 'Prints a link that invites to a post in a club, or to a role in the programme. It works once, for fourteen days.',
  },
  divers: { usage: 'divers [--json]', does: 'Lists the divers with their ids.' },
  readiness: {
    usage: 'readiness --diver ID [--date YYYY-MM-DD] [--json]',
    does: 'What a diver is ready for, near, or held up on, as of today or of the end of a date.',
  },
  rebuild: {
    usage: 'rebuild --check [--json]',
    does: 'Recomputes everything that is kept for speed from the raw rows, and compares. Exit code 1 when they differ.',
  },
  demo: {
    usage: 'demo --check | --write',
    does: 'For who changes the demo: whether the prepared one in seed/demo/prepared fits the seed and the migrations (exit code 1 when not), or tells its seasons on a database of its own, which takes minutes, and prepares it again.',
  },
}

const lines = Object.values(commands).map(({ usage, does }) => `  ${usage}\n      ${does}`)
const help = `npm run -s plumbline -- COMMAND [--json]\n\n${lines.join('\n')}\n\n  COMMAND --help says this of one command. Exit code 2: the command was not understood.\n`

/** A command's file; it is loaded only when the command is asked for. */
const fileOf = (name: string) => path.join(import.meta.dirname, 'commands', `${name}.ts`)

async function dispatch(args: string[]): Promise<number> {
  const [name, ...rest] = args
  if (name === '--help' || name === '-h' || name === 'help') {
    process.stdout.write(help)
    return 0
  }
  const command = name === undefined ? undefined : commands[name]
  if (name === undefined || !command) {
    process.stderr.write(name === undefined ? help : `There is no command "${name}".\n\n${help}`)
    return 2
  }
  const { run, help: ownHelp }: Command = await import(fileOf(name))
  if (!rest.includes('--help') && !rest.includes('-h')) return run(rest)
  process.stdout.write(ownHelp ?? `Usage: plumbline ${command.usage}\n\n${command.does}\n`)
  return 0
}

try {
  process.exitCode = await dispatch(process.argv.slice(2))
} catch (error) {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`)
  process.exitCode = 1
}
