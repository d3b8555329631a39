import path from 'node:path'
import { parseArgs } from 'node:util'
import { v7 as uuidv7 } from 'uuid'
import { consoleScopeOf } from '../../lib/access/scope'
import { publishEdition } from '../../lib/assessment/store/publish'
import { isZone } from '../../lib/assessment/time'
import { asAccount, closeDatabase, connectAsOwner } from '../../lib/platform/db'
import { readCurriculum } from '../../seed/read-curriculum'
import { nobody } from './console'
import { sayInvitation } from './invite-link'
import { understood } from './understood'

const usage = 'Usage: plumbline programme NAME --zone ZONE [--curriculum PATH] [--for WHO]\n'

interface Asked {
  readonly name: string
  readonly zone: string
  readonly curriculum: string
  readonly label: string
}

/** Throws an Error whose message says how the arguments are wrong. */
function parse(args: string[]): Asked {
  const { values, positionals } = parseArgs({
    args,
    allowPositionals: true,
    options: { zone: { type: 'string' }, curriculum: { type: 'string' }, for: { type: 'string' } },
  })
  const [name = ''] = positionals
  if (positionals.length !== 1 || !name.trim())
    throw new Error('name the programme, in quotation marks when it has several words')
  if (!values.zone || !isZone(values.zone)) throw new Error('give its time zone: --zone Europe/London')
  return {
    name: name.trim(),
    zone: values.zone,
    curriculum: values.curriculum ?? path.resolve(import.meta.dirname, '../../seed/curriculum'),
    label: values.for ?? 'whoever opens it',
  }
}

async function begin({ name, zone, curriculum, label }: Asked): Promise<string> {
  const { document, problems } = readCurriculum(curriculum)
  if (!document)
    throw new Error(
      `The curriculum cannot be read; nothing was begun.\n${problems.map(({ place, message }) => `  ${place}: ${message}`).join('\n')}`,
    )
  const programme = { id: uuidv7(), name, zone, isDemo: false }
  const scope = consoleScopeOf({ ...programme, clockOffset: 0 }, Date.now())
  await asAccount(nobody, async (tx) => {
    const there = await tx.programme.findFirst()
    if (there)
      throw new Error(
        `This database holds ${there.name}${there.isDemo ? ', the demo,' : ''} already. With PLUMBLINE_STATE=FOLDER before this command and before npm start, another one begins in a folder of its own.`,
      )
    await tx.programme.create({ data: { ...programme, createdAt: new Date(scope.at) } })
  })
  const published = await publishEdition(scope, document)
  if (!published.ok) throw new Error(published.problems.map(({ message }) => message).join('\n'))
  return `${name} has begun, with edition ${published.number} of its curriculum.\n${await sayInvitation(scope, { role: 'lead', club: null }, label)}`
}

/** `programme NAME --zone ZONE`: a programme of one's own in an empty database. */
export const run = (args: string[]): Promise<number> =>
  understood(
    usage,
    () => parse(args),
    async (asked) => {
      connectAsOwner()
      try {
        process.stdout.write(await begin(asked))
        return 0
      } finally {
        await closeDatabase()
      }
    },
  )
