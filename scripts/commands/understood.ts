/**
 * Runs a command on its arguments once they are understood. Where `read` throws, its message says how they are wrong: that and
 * the usage go to stderr, nothing is run, and the exit code is 2.
 */
export async function understood<Asked>(
  usage: string,
  read: () => Asked,
  run: (asked: Asked) => Promise<number>,
): Promise<number> {
  let asked: Asked
  try {
    asked = read()
  } catch (error) {
    process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n${usage}`)
    return 2
  }
  return run(asked)
}
