import { run } from './run.js'
import { oneLine, type Terminal } from './terminal.js'

/** The terminal this process was started from. */
const processTerminal: Terminal = {
  out: (text) => void process.stdout.write(`${text}\n`),
  err: (line) => void process.stderr.write(`${oneLine(line)}\n`),
  watched: process.stderr.isTTY === true,
  ...(process.stdin.isTTY && process.stderr.isTTY
    ? {
        ask: async (question) => (await import('./ask.js')).ask(question),
        agree: async (question) => (await import('./ask.js')).agree(question),
      }
    : {}),
}

// A reader that closes early (`| head`) is not a bug.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error
})
process.exitCode = await run(process.argv.slice(2), processTerminal)
