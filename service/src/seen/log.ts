import { type DestinationStream, type Logger, pino } from 'pino'

/**
 * The log: one JSON object a line. Nothing that is passed to it names a person, a building or a body; what could by
 * accident is removed.
 */
export function makeLog(level: string, destination?: DestinationStream): Logger {
  const options = {
    level,
    base: null,
    timestamp: pino.stdTimeFunctions.isoTime,
    redact: {
      paths: ['*.authorization', 'authorization', 'body', '*.body', 'token', '*.token'],
      remove: true,
    },
  }
  return destination ? pino(options, destination) : pino(options)
}

export const silentLog: Logger = pino({ level: 'silent' })
