import type { RequestListener, Server } from 'node:http'
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { onTestFinished } from 'vitest'

/** Serves an app on a free port of loopback until the test is over. Resolves to its address. */
export async function listen(app: RequestListener): Promise<string> {
  const server: Server = createServer(app)
  // Work in this process may keep the server from its timers: it must not close a connection that is about to be used again.
  server.keepAliveTimeout = 0
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  onTestFinished(() => {
    server.closeAllConnections()
    server.close()
  })
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}`
}

export const postJson = (url: string, body: BodyInit, headers: Record<string, string> = {}) =>
  fetch(url, { method: 'POST', body, headers: { 'content-type': 'application/json', ...headers } })
