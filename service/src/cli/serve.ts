import type { AddCommand } from './command.js'
import { addServeOptions, settingsOf } from './serve-options.js'
import { UsageError } from './usage-error.js'

export const addServe: AddCommand = (command, { terminal, end }) => {
  addServeOptions(command).action(async (options: Parameters<typeof settingsOf>[0]) => {
    // Loaded here, so that the other commands do not wait for a server they do not need.
    const { runService } = await import('../running/run-service.js')
    const ended = await runService(settingsOf(options), terminal)
    if ('faults' in ended) throw new UsageError(ended.faults.join('\ndraughtbook: '))
    end(ended.code)
  })
}
