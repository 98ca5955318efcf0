import { type DestinationStream, type Logger, pino } from 'pino'
import { fileFault } from '../files/file-fault.js'

/** Lines that wait for a reader who is slow, at most: some hundred thousand calls. */
const MOST_WAITING_BYTES = 64 * 1024 * 1024

/** Lines are gathered for so long and written together: under load, writing each by itself takes a fifth of the event loop. */
const GATHER_MS = 50

/**
 * Standard output, written to without waiting: whoever reads the log may be slow, and the event loop must not stand
 * still for them. Lines not yet written when the process ends are written then; only a killed process loses its last.
 * @param onFault - told once why lines can be written no more; what is still waiting then is lost
 * @param maxLength - most bytes that wait for a reader; fewer in tests
 */
export function standardOutput(
  onFault: (why: string) => void,
  maxLength = MOST_WAITING_BYTES,
): DestinationStream {
  const destination = pino.destination({ fd: 1, sync: false, maxLength })
  let failed = false
  const fail = (why: string): void => {
    if (failed) return
    failed = true
    // Else the end of the process would wait for the same lines for ever.
    destination.destroy()
    onFault(why)
  }
  destination.on('error', (error: Error) => fail(fileFault(error) ?? error.message))
  destination.on('drop', () => fail('nothing reads it, and too much is waiting'))
  return gathered((lines) => {
    if (!failed) destination.write(lines)
  })
}

function gathered(write: (lines: string) => void): DestinationStream {
  let lines = ''
  let timer: NodeJS.Timeout | undefined
  const pass = (): void => {
    timer = undefined
    const passed = lines
    lines = ''
    if (passed !== '') write(passed)
  }
  // Before the destination itself writes what it has left.
  process.prependListener('exit', pass)
  return {
    write: (line) => {
      lines += line
      if (timer === undefined) timer = setTimeout(pass, GATHER_MS).unref()
    },
  }
}

/**
 * The log: one JSON object a line. Nothing that is passed to it names a person, a building or a body; what could by
 * accident is removed.
 */
export function makeLog(level: string, destination: DestinationStream): Logger {
  const options = {
    level,
    base: null,
    timestamp: pino.stdTimeFunctions.isoTime,
    redact: {
      paths: ['*.authorization', 'authorization', 'body', '*.body', 'token', '*.token'],
      remove: true,
    },
  }
  return pino(options, destination)
}

export const silentLog: Logger = pino({ level: 'silent' })
