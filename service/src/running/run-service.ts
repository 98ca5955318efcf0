import type { Terminal } from '../cli/terminal.js'
import { fileFault } from '../files/file-fault.js'
import { makeLog } from '../seen/log.js'
import { settingsFaults } from '../settings/check-settings.js'
import type { Settings } from '../settings/settings.js'
import { overviewText } from './overview.js'
import { start } from './start.js'

/** Runs the service until it is told to stop. Resolves to what kept it from starting; empty after an orderly end. */
export async function runService(settings: Settings, terminal: Terminal): Promise<string[]> {
  const faults = settingsFaults(settings)
  if (faults.length > 0) return faults
  const log = makeLog(settings.logLevel)
  const running = await start(settings, log).catch((error: unknown) => startFault(error, settings))
  if (typeof running === 'string') return [running]
  terminal.err(`draughtbook: ${running.url}`)
  for (const line of overviewText(settings)) terminal.err(`  ${line}`)
  const signal = await toldToStop()
  terminal.err(`draughtbook: ${signal}, finishing running requests`)
  // A second signal means "now".
  process.once(signal, () => process.exit(130))
  const finished = await running.stop()
  if (!finished) log.warn(`some requests did not finish within ${settings.grace_s} s`)
  terminal.err('draughtbook: stopped')
  return []
}

const toldToStop = () =>
  new Promise<NodeJS.Signals>((resolve) => {
    for (const signal of ['SIGTERM', 'SIGINT'] as const) process.once(signal, () => resolve(signal))
  })

function startFault(error: unknown, { host, port }: Settings): string {
  const code = error instanceof Error && 'code' in error ? error.code : undefined
  if (code === 'EADDRINUSE') return `${host}:${port} is in use by another program; choose another --port`
  if (code === 'EADDRNOTAVAIL') return `${host} is not an address of this machine`
  if (code === 'EACCES') return `this user may not open port ${port}`
  const fault = fileFault(error)
  const path = error instanceof Error && 'path' in error ? String(error.path) : ''
  if (fault) return `${path}: ${fault}`
  return error instanceof Error ? error.message : String(error)
}
