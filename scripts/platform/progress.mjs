/** Progress goes to stderr with the seconds since the start, so that stdout carries only what was asked for. */

let patienceMs = 0

/** A command line that is quick stays silent: a step is named only once it has taken this long. @param {number} ms */
export function setPatience(ms) {
  patienceMs = ms
}

/** @param {string} text */
export const say = (text) => process.stderr.write(`${(performance.now() / 1000).toFixed(1).padStart(6)} s  ${text}\n`)

/** @param {number} since a `performance.now()` */
export const secondsSince = (since) => ((performance.now() - since) / 1000).toFixed(1)

/**
 * Names the work, says every twenty seconds that it goes on, and how long it took.
 * @template T
 * @param {string} name
 * @param {() => Promise<T>} work
 */
export async function step(name, work) {
  const began = performance.now()
  let named = false
  const announce = () => {
    say(named ? `${name}: still at it after ${secondsSince(began)} s` : `${name} …`)
    named = true
  }
  if (patienceMs === 0) announce()
  else setTimeout(announce, patienceMs).unref()
  const reminder = setInterval(announce, 20_000)
  try {
    const result = await work()
    if (performance.now() - began >= patienceMs) say(`${name}: done in ${secondsSince(began)} s`)
    return result
  } finally {
    clearInterval(reminder)
  }
}

/** Something the person at the terminal can put right: printed without a stack. */
export class Refusal extends Error {}

/** @param {unknown} error */
export const explain = (error) =>
  error instanceof Refusal ? error.message : error instanceof Error ? (error.stack ?? error.message) : String(error)
