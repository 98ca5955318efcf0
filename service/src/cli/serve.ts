import { createServer } from 'node:http'
import { createApp } from '../app.js'
import type { AddCommand } from './command.js'

export const addServe: AddCommand = (program, { terminal }) => {
  program
    .command('serve')
    .description('run the service, the pane and the API')
    .option('--port <number>', 'port to listen on', '8460')
    .option('--host <address>', 'address to listen on', '127.0.0.1')
    .action(async ({ port, host }: { port: string; host: string }) => {
      const server = createServer(createApp({ report: (error) => terminal.err(String(error)) }))
      await new Promise<void>((resolve, reject) => {
        server.once('error', reject)
        server.listen(Number(port), host, resolve)
      })
      terminal.err(`draughtbook: listening on http://${host}:${port}`)
    })
}
