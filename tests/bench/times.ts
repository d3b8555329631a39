import { quantile } from '../architecture/sizes'

/** Runs something some times, after one run that is not counted, and prints the least, the median and the 95th percentile in milliseconds. */
export async function time(what: string, runs: number, work: (run: number) => Promise<unknown>): Promise<void> {
  await work(-1)
  const times: number[] = []
  for (let run = 0; run < runs; run++) {
    const began = performance.now()
    await work(run)
    times.push(performance.now() - began)
  }
  const [min, median, p95] = [Math.min(...times), quantile(times, 0.5), quantile(times, 0.95)].map((ms) =>
    ms.toFixed(0),
  )
  process.stdout.write(`${what.padEnd(44)} min ${min} ms, median ${median} ms, p95 ${p95} ms (${runs} runs)\n`)
}
