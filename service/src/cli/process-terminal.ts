import { oneLine, type Terminal } from './terminal.js'

/** The terminal this process was started from. */
export const processTerminal: Terminal = {
  out: (text) => void process.stdout.write(`${text}\n`),
  err: (line) => void process.stderr.write(`${oneLine(line)}\n`),
  watched: process.stderr.isTTY === true,
  ...(process.stdin.isTTY && process.stderr.isTTY
    ? {
        ask: async (file, questions) => (await import('./ask.js')).ask(file, questions),
        agree: async (question) => (await import('./agree.js')).agree(question),
      }
    : {}),
}
