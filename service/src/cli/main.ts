import { processTerminal } from './process-terminal.js'
import { run } from './run.js'

// A reader that closes early (`| head`) is not a fault of ours.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error
})
process.exitCode = await run(process.argv.slice(2), processTerminal)
