import { type Cluster, migrateInto, startCluster } from '../../scripts/database/own-cluster'

/** A PostgreSQL with a migrated, empty database, whose addresses this process will read when it first asks for them. */
export async function startBenchCluster(): Promise<Cluster> {
  const cluster = await startCluster()
  await migrateInto(cluster, 'bench')
  const { owner, app } = cluster.urls('bench')
  Object.assign(process.env, { DATABASE_URL: owner, DATABASE_APP_URL: app, PLUMBLINE_STATE: cluster.folder })
  return cluster
}
