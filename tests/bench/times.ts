import { quantile } from '../architecture/sizes'

/**
 * Runs something some times, after one run that is not counted, and prints the least, the median and the 95th percentile in
 * milliseconds; then the median of this process's own work, which a busy machine draws out less.
 */
export async function time(what: string, runs: number, once: (run: number) => Promise<unknown>): Promise<void> {
  await once(-1)
  const times: number[] = []
  const work: number[] = []
  for (let run = 0; run < runs; run++) {
    const began = performance.now()
    const before = process.cpuUsage()
    await once(run)
    times.push(performance.now() - began)
    const { user, system } = process.cpuUsage(before)
    work.push((user + system) / 1000)
  }
  const shown = [Math.min(...times), quantile(times, 0.5), quantile(times, 0.95), quantile(work, 0.5)]
  const [min, median, p95, own] = shown.map((ms) => ms.toFixed(0))
  process.stdout.write(
    `${what.padEnd(44)} min ${min} ms, median ${median} ms, p95 ${p95} ms, own work ${own} ms (${runs} runs)\n`,
  )
}
