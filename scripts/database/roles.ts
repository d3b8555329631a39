import pg from 'pg'

/** What two roles may do: the owner migrates; the application role owns nothing and passes no policy by. */

export async function withClient<T>(url: string, work: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: url })
  await client.connect().catch((error: unknown) => {
    const { username, host, pathname } = new URL(url)
    throw new Error(
      `${username}@${host}${pathname} cannot be reached: ${error instanceof Error ? error.message : error}.`,
    )
  })
  try {
    return await work(client)
  } finally {
    await client.end()
  }
}

const nameAndPassword = (url: string) => {
  const { username, password, pathname } = new URL(url)
  return {
    role: decodeURIComponent(username),
    password: decodeURIComponent(password),
    database: decodeURIComponent(pathname.slice(1)),
  }
}

const exists = async (client: pg.Client, catalog: 'pg_roles' | 'pg_database', column: string, name: string) =>
  (await client.query(`SELECT 1 FROM ${catalog} WHERE ${column} = $1`, [name])).rowCount === 1

async function makeRole(client: pg.Client, url: string): Promise<void> {
  const { role, password } = nameAndPassword(url)
  const [name, word] = [client.escapeIdentifier(role), client.escapeLiteral(password)]
  const verb = (await exists(client, 'pg_roles', 'rolname', role)) ? 'ALTER' : 'CREATE'
  await client.query(
    `${verb} ROLE ${name} LOGIN NOSUPERUSER NOCREATEDB NOCREATEROLE NOBYPASSRLS NOINHERIT PASSWORD ${word}`,
  )
}

/** Both roles and the owner's database, by the superuser of a cluster of our own. `anew` drops the database first. */
export const makeOwnDatabase = (adminUrl: string, ownerUrl: string, appUrl: string, anew: boolean): Promise<void> =>
  withClient(adminUrl, async (client) => {
    await makeRole(client, ownerUrl)
    await makeRole(client, appUrl)
    const { role, database } = nameAndPassword(ownerUrl)
    const name = client.escapeIdentifier(database)
    if (anew) await client.query(`DROP DATABASE IF EXISTS ${name} WITH (FORCE)`)
    if (!(await exists(client, 'pg_database', 'datname', database)))
      await client.query(`CREATE DATABASE ${name} OWNER ${client.escapeIdentifier(role)}`)
  })

/** In a database of someone else's the migrations need a role `app_user`; made when missing, if the owner may. */
export const makeAppRole = (ownerUrl: string, appUrl: string): Promise<void> =>
  withClient(ownerUrl, async (client) => {
    if (await exists(client, 'pg_roles', 'rolname', 'app_user')) return
    const { role, password } = nameAndPassword(appUrl)
    if (role !== 'app_user')
      throw new Error(
        'The migrations grant to a role "app_user", which does not exist. Make it (CREATE ROLE app_user NOLOGIN) and grant it to the role of DATABASE_APP_URL.',
      )
    try {
      await client.query(`CREATE ROLE app_user LOGIN NOBYPASSRLS NOINHERIT PASSWORD ${client.escapeLiteral(password)}`)
    } catch (error) {
      throw new Error(
        `The role of DATABASE_URL may not make roles. Let an administrator run CREATE ROLE app_user LOGIN NOINHERIT PASSWORD '…', and give its address as DATABASE_APP_URL. (${error instanceof Error ? error.message : error})`,
      )
    }
  })

/** One at a time, however many machines start at once. */
export const inTurn = <T>(ownerUrl: string, work: () => Promise<T>): Promise<T> =>
  withClient(ownerUrl, async (client) => {
    await client.query(`SELECT pg_advisory_lock(hashtext('plumbline migrations'))`)
    return work()
  })

/** Only the two roles may connect. */
export const closeToOthers = (ownerUrl: string): Promise<void> =>
  withClient(ownerUrl, async (client) => {
    const name = client.escapeIdentifier(nameAndPassword(ownerUrl).database)
    await client.query(`REVOKE ALL ON DATABASE ${name} FROM PUBLIC; GRANT CONNECT ON DATABASE ${name} TO app_user`)
  })

/** Throws Error when the application would serve with rights that row-level security does not hold. */
export async function requirePowerless(appUrl: string): Promise<void> {
  const [rights] = await withClient(appUrl, (client) =>
    client.query<{ role: string; unbound: boolean; owns: boolean; member: boolean; changes: boolean }>(`
      SELECT current_user AS role, rolsuper OR rolbypassrls OR rolcreaterole AS unbound,
        EXISTS (SELECT FROM pg_class WHERE relnamespace = 'public'::regnamespace AND pg_has_role(current_user, relowner, 'MEMBER')) AS owns,
        pg_has_role(current_user, 'app_user', 'USAGE') AS member,
        has_table_privilege('"Ledger"', 'UPDATE, DELETE, TRUNCATE') AS changes
      FROM pg_roles WHERE rolname = current_user`),
  ).then(
    (result) => result.rows,
    (error: Error) => {
      throw new Error(
        `${error.message} If "app_user" has a password of its own there, give its address as DATABASE_APP_URL.`,
      )
    },
  )
  if (!rights) throw new Error('The role of DATABASE_APP_URL could not be looked up.')
  const { role, unbound, owns, member, changes } = rights
  if (unbound || owns || changes)
    throw new Error(
      `Plumbline does not serve as "${role}": it ${unbound ? 'is not bound by row-level security' : owns ? 'owns tables' : 'may change the ledger'}. Give the address of a role without rights of its own as DATABASE_APP_URL.`,
    )
  if (!member) throw new Error(`"${role}" of DATABASE_APP_URL has no access: GRANT app_user TO "${role}".`)
}
