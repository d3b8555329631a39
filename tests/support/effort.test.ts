import { beforeEach, expect, it, vi } from 'vitest'

beforeEach(() => {
  vi.resetModules()
  return () => vi.unstubAllEnvs()
})

it.each([
  ['nothing', undefined, 1],
  ['0', '0', 1],
  ['1', '1', 10],
])('does the short form unless 1 asks for the long: %s', async (_, value, wanted) => {
  vi.stubEnv('PLUMBLINE_LONG', value)
  const { effort, lawRuns } = await import('./effort')
  expect(effort(1, 10)).toBe(wanted)
  expect(lawRuns.each).toBe(290 * wanted)
})

it('says what may be written where anything else is', async () => {
  vi.stubEnv('PLUMBLINE_LONG', 'yes')
  await expect(import('./effort')).rejects.toThrow('PLUMBLINE_LONG is 1 for the long tests')
})
