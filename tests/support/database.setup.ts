import { afterAll, beforeAll, inject, vi } from 'vitest'
import { databaseUrls, removeDatabase, resetDatabase } from './database'

// Before the test file is loaded: what it imports reads the environment on first use.
vi.stubEnv('DATABASE_URL', databaseUrls().owner)
vi.stubEnv('DATABASE_APP_URL', databaseUrls().app)
vi.stubEnv('PLUMBLINE_STATE', inject('stateFolder'))
vi.stubEnv('PLUMBLINE_DEMO_PASSWORD', 'for-the-tests-only')
vi.stubEnv('NEXTAUTH_SECRET', 'a session secret that only the tests use')
vi.stubEnv('NEXTAUTH_URL', 'http://127.0.0.1:3000')

beforeAll(resetDatabase)
afterAll(removeDatabase)
