import { writeSync } from 'node:fs'
import type { Terminal } from '../cli/terminal.js'
import { fileFault } from '../files/file-fault.js'
import { makeLog, standardOutput } from '../seen/log.js'
import { settingsFaults } from '../settings/check-settings.js'
import { missingPaths } from '../settings/missing-paths.js'
import type { Settings } from '../settings/settings.js'
import { overviewText } from './overview.js'
import { start } from './start.js'
import { startWatchdog } from './watchdog.js'

/** How a service ends that has begun; `deploy/README.md` lists them. */
export const ENDED = { orderly: 0, unfinished: 3, noLog: 74, toldTwice: 130 } as const

export interface Starting {
  /** Whether to say what is on and off. */
  readonly overview?: boolean
  /** Done once the service takes work; when it fails, the service ends. */
  readonly ready?: (url: string) => Promise<void>
}

const LIST = new Intl.ListFormat('en-GB', { type: 'conjunction' })

/** More than stopping needs beyond what it was allowed. */
const MARGIN_s = 10

/**
 * Runs the service until it is told to stop.
 * @returns what kept it from starting, or the exit code it ends with
 */
export async function runService(
  settings: Settings,
  terminal: Terminal,
  { overview = true, ready = async () => undefined }: Starting = {},
): Promise<{ faults: string[] } | { code: number }> {
  const faults = settingsFaults(settings)
  if (faults.length > 0) return { faults }
  // Whoever started the service may stop reading what it says about itself: that ends nothing.
  process.stderr.on('error', () => undefined)
  const log = makeLog(settings.logLevel, standardOutput(endWithoutLog))
  // From here on, so that what the start makes is cleared away too.
  const told = toldToStop()
  const running = await start(settings, log).catch((error: unknown) => startFault(error, settings))
  if (typeof running === 'string') return { faults: [running] }
  const watchdog = startWatchdog()
  terminal.err(`draughtbook: ${running.url}`)
  for (const line of await missingPaths(settings)) terminal.err(`draughtbook: ${line}`)
  if (overview) for (const line of overviewText(settings)) terminal.err(`  ${line}`)
  terminal.err(`draughtbook: starting; waiting for ${LIST.format(running.state.startingUp)}`)
  const failed = running.warm
    .then(() => {
      terminal.err('draughtbook: ready')
      return ready(running.url)
    })
    .then(
      () => new Promise<never>(() => {}),
      (error: unknown) => ({ fault: messageOf(error) }),
    )
  const signal = await Promise.race([told, failed])
  if (typeof signal !== 'string') {
    await running.stop()
    watchdog.end()
    return { faults: [signal.fault] }
  }
  terminal.err(`draughtbook: ${signal}, finishing running requests`)
  watchdog.endWithin(settings.drain_s + settings.grace_s + MARGIN_s)
  const finished = await running.stop()
  if (!finished) {
    log.warn(`some requests did not finish within ${settings.grace_s} s`)
    terminal.err(`draughtbook: some requests were not finished within ${settings.grace_s} s`)
  }
  terminal.err('draughtbook: stopped')
  watchdog.end()
  return { code: finished ? ENDED.orderly : ENDED.unfinished }
}

const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error))

/** Calls must leave a line. Where they cannot, the service does not go on as if they did. */
function endWithoutLog(why: string): void {
  try {
    writeSync(2, `draughtbook: the log cannot be written (${why}), so the service ends\n`)
  } catch {
    // Standard error may be on the same disk.
  }
  process.exit(ENDED.noLog)
}

/** The last one comes when the terminal is closed. */
const SIGNALS = ['SIGTERM', 'SIGINT', 'SIGHUP'] as const

/** Resolves to the first signal. A second, whichever it is, means "now". */
function toldToStop(): Promise<string> {
  let told = false
  return new Promise((resolve) => {
    for (const signal of SIGNALS)
      process.on(signal, () => {
        if (told) process.exit(ENDED.toldTwice)
        told = true
        resolve(signal)
      })
  })
}

function startFault(error: unknown, { host, port }: Settings): string {
  const code = error instanceof Error && 'code' in error ? error.code : undefined
  if (code === 'EADDRINUSE') return `${host}:${port} is in use by another program; choose another --port`
  if (code === 'EADDRNOTAVAIL') return `${host} is not an address of this machine`
  if (code === 'EACCES') return `this user may not open port ${port}`
  const fault = fileFault(error)
  const path = error instanceof Error && 'path' in error ? String(error.path) : ''
  if (fault) return `${path}: ${fault}`
  return messageOf(error)
}
