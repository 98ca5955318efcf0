import { createServer as createPlainServer, IncomingMessage, ServerResponse } from 'node:http'
import { type AddressInfo, connect, Socket } from 'node:net'
import { describe, expect, it, onTestFinished } from 'vitest'
import { createApp } from '../../service/src/app'
import { makeServer, type Patience } from '../../service/src/running/make-server'
import { PACE, watchBodies } from '../../service/src/running/pace'
import { selfSigned } from './support/self-signed'

async function serving(patience: Patience, tls?: { cert: Buffer; key: Buffer }) {
  const made = makeServer(createApp(), tls, patience)
  await new Promise<void>((resolve) => made.listen(0, '127.0.0.1', resolve))
  onTestFinished(() => {
    made.closeAllConnections()
    made.close()
  })
  return (made.address() as AddressInfo).port
}

function open(port: number) {
  const socket: Socket = connect(port, '127.0.0.1')
  let answer = ''
  socket.on('error', () => undefined)
  socket.on('data', (chunk) => {
    answer += chunk.toString('latin1')
  })
  const closed = new Promise<string>((resolve) => socket.once('close', () => resolve(answer)))
  onTestFinished(() => void socket.destroy())
  return { socket, closed }
}

const HEAD = (length: number) =>
  `POST /v1/evaluations HTTP/1.1\r\nhost: localhost\r\ncontent-type: application/json\r\nconnection: close\r\ncontent-length: ${length}\r\n\r\n`

describe('a sender of a body', () => {
  it('that is slow but keeps going is heard to the end, however long it takes', async () => {
    // Far beyond the time after which the rate counts; on a busy machine it only takes longer.
    const pace = { pause_ms: 20_000, after_ms: 200, bytes_per_s: 1 }
    const { socket, closed } = open(await serving({ pace }))
    socket.write(HEAD(40))
    for (let sent = 0; sent < 40; sent += 2) {
      socket.write(sent === 0 ? '{ ' : sent === 38 ? ' }' : '  ')
      await new Promise((resolve) => setTimeout(resolve, 50))
    }
    expect(await closed).toMatch(/^HTTP\/1\.1 422 /)
  })

  it('that stops is cut off', async () => {
    const pace = { pause_ms: 400, after_ms: 60_000, bytes_per_s: 1 }
    const { socket, closed } = open(await serving({ pace }))
    socket.write(`${HEAD(1000)}{`)
    expect(await closed).toMatch(/^HTTP\/1\.1 408 [\s\S]*"status":408/)
  })

  it('that lets it drip is cut off', async () => {
    const pace = { pause_ms: 60_000, after_ms: 400, bytes_per_s: 10_000 }
    const { socket, closed } = open(await serving({ pace }))
    socket.write(`${HEAD(1000)}{`)
    const drip = setInterval(() => socket.write(' '), 50)
    onTestFinished(() => clearInterval(drip))
    expect(await closed).toMatch(/^HTTP\/1\.1 408 /)
  })
})

it('a sender is not held to time in which the process stood still, suspended by its user or the system', () => {
  let now = 0
  const cut: unknown[] = []
  const bodies = watchBodies(
    PACE,
    (request) => cut.push(request),
    () => now,
  )
  bodies.end()
  const request = Object.assign(new IncomingMessage(new Socket()), { headers: { 'content-length': '9' } })
  bodies.watch(request, new ServerResponse(request))
  const after = (seconds: number) => {
    now += seconds * 1000
    bodies.check()
    return cut.length
  }
  for (let second = 0; second < 10; second++) expect(after(1)).toBe(0)
  expect(after(3600)).toBe(0)
  for (let second = 0; second < 10; second++) after(1)
  expect(cut).toEqual([request])
})

describe('a TLS connection that agrees on nothing', () => {
  it.each([
    ['is silent', ''],
    ['speaks something else', 'GET / HTTP/1.1\r\nhost: localhost\r\n\r\n'],
  ])('because the other side %s is closed', async (_what, text) => {
    const { socket, closed } = open(await serving({ headers_ms: 500 }, await selfSigned()))
    if (text) socket.write(text)
    expect(await closed).not.toMatch(/^HTTP/)
  })
})

it('the plain server of Node would wait for a silent sender far longer', () => {
  expect(createPlainServer().requestTimeout).toBeGreaterThan(60_000)
})
