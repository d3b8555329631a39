import pg from 'pg'
import type { TestProject } from 'vitest/node'
import { type DatabaseUrls, migrateInto, startCluster } from '../../scripts/database/own-cluster'

declare module 'vitest' {
  export interface ProvidedContext {
    /** Addresses of the template; another database's differ in the name alone. */
    template: DatabaseUrls
    stateFolder: string
  }
}

/** Once a run: a server and a migrated template, of which each test file gets its copy. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const cluster = await startCluster()
  await migrateInto(cluster, 'template_plumbline')
  const admin = new pg.Client({ connectionString: cluster.urls('postgres').superuser })
  await admin.connect()
  // A connection to the template would block the copies.
  await admin.query('ALTER DATABASE template_plumbline IS_TEMPLATE true ALLOW_CONNECTIONS false')
  await admin.end()
  project.provide('template', cluster.urls('template_plumbline'))
  project.provide('stateFolder', cluster.folder)
  return cluster.close
}
