import { connection } from 'next/server'
import { getHealth } from '@/lib/platform/health'

/** For whoever watches the server: 200 when it can do its work, 503 when it cannot. Says nothing that is not public. */
export async function GET(): Promise<Response> {
  await connection()
  const health = await getHealth()
  return Response.json(health, { status: health.status === 'ok' ? 200 : 503 })
}
