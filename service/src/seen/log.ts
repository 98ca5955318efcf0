import { type DestinationStream, type Logger, pino } from 'pino'

/**
 * Standard output, written to without waiting: whoever reads the log may be slow, and the event loop must not stand
 * still for them. Lines not yet written when the process ends are written then; only a killed process loses its last.
 */
const standardOutput = (): DestinationStream => pino.destination({ fd: 1, sync: false })

/**
 * The log: one JSON object a line. Nothing that is passed to it names a person, a building or a body; what could by
 * accident is removed.
 */
export function makeLog(level: string, destination = standardOutput()): Logger {
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
