import { vi } from 'vitest'

/** Runs a command of the console: its exit code, and what it said on stdout and stderr. */
export async function told(run: (args: string[]) => Promise<number>, ...args: string[]) {
  const said = { out: '', err: '' }
  const spies = (['stdout', 'stderr'] as const).map((stream) =>
    vi.spyOn(process[stream], 'write').mockImplementation((text) => {
      said[stream === 'stdout' ? 'out' : 'err'] += String(text)
      return true
    }),
  )
  try {
    return { code: await run(args), ...said }
  } finally {
    for (const spy of spies) spy.mockRestore()
  }
}
