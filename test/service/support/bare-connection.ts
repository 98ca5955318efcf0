import { type AddressInfo, connect } from 'node:net'
import { expect, onTestFinished } from 'vitest'
import { createApp } from '../../../service/src/app'
import { makeServer } from '../../../service/src/running/make-server'
import type { Settings } from '../../../service/src/settings/settings'

/** Sends a text over a bare connection; resolves to the statuses answered by the time the connection is closed. */
export async function answersTo(text: string, settings?: Settings): Promise<string[]> {
  const server = makeServer(createApp(settings && { settings }))
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  onTestFinished(() => {
    server.closeAllConnections()
    server.close()
  })
  const { port } = server.address() as AddressInfo
  const answer = await new Promise<string>((resolve) => {
    let got = ''
    const socket = connect(port, '127.0.0.1', () => socket.write(text, 'latin1'))
    socket.on('data', (chunk) => {
      got += chunk.toString('latin1')
    })
    socket.on('error', () => undefined)
    socket.on('close', () => resolve(got))
  })
  expect((await fetch(`http://127.0.0.1:${port}/healthz`)).status).toBe(200)
  return [...answer.matchAll(/HTTP\/1\.1 (\d{3})/g)].map(([, status = '']) => status)
}
