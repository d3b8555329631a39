import { explain } from './platform/progress.mjs'
import { serve } from './platform/serve.mjs'

try {
  process.exitCode = await serve()
} catch (error) {
  process.stderr.write(`\n${explain(error)}\n`)
  process.exitCode = 1
}
// A kept-alive connection to the stopped server would hold the process for seconds.
process.exit()
