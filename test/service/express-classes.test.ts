import type { AddressInfo } from 'node:net'
import express from 'express'
import { expect, it, onTestFinished } from 'vitest'
import { makeServer } from '../../service/src/running/make-server'

/** Address of an app on a server of the service's kind. */
async function served(app: Parameters<typeof makeServer>[0]) {
  const server = makeServer(app)
  const before: unknown[] = []
  server.prependListener('request', (request, response) =>
    before.push(Object.getPrototypeOf(request), Object.getPrototypeOf(response)),
  )
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  onTestFinished(() => {
    server.closeAllConnections()
    server.close()
  })
  return { before, url: `http://127.0.0.1:${(server.address() as AddressInfo).port}` }
}

it('gives express requests and answers whose prototype it need not change', async () => {
  const app = express()
  const after: unknown[] = []
  app.get('/', (request, response) => {
    after.push(Object.getPrototypeOf(request), Object.getPrototypeOf(response))
    response.json({ host: request.get('host'), sameApp: request.app === app && response.app === app })
  })
  const { before, url } = await served(app)
  const answer = await fetch(url)
  expect(await answer.json()).toEqual({ host: new URL(url).host, sameApp: true })
  expect(after[0]).toBe(before[0])
  expect(after[1]).toBe(before[1])
})

it('leaves a listener that is not an express app as it is', async () => {
  const { url } = await served((_request, response) => response.end('plain'))
  expect(await (await fetch(url)).text()).toBe('plain')
})
