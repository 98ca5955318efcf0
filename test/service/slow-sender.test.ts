import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { connect } from 'node:net'
import { describe, expect, it, onTestFinished } from 'vitest'
import { createApp } from '../../service/src/app'
import { makeServer } from '../../service/src/running/make-server'

async function server() {
  const made = makeServer(createApp())
  // The real limits are 10 s and 60 s; the mechanism is the same with shorter ones.
  made.headersTimeout = 300
  made.requestTimeout = 600
  await new Promise<void>((resolve) => made.listen(0, '127.0.0.1', resolve))
  onTestFinished(() => {
    made.closeAllConnections()
    made.close()
  })
  return (made.address() as AddressInfo).port
}

/** Opens a bare connection, sends pieces with pauses, and resolves to all it was answered once it is closed. */
function send(port: number, pieces: readonly string[], pause_ms: number): Promise<string> {
  return new Promise((resolve) => {
    const socket = connect(port, '127.0.0.1')
    let answer = ''
    socket.on('data', (chunk) => {
      answer += chunk.toString('latin1')
    })
    socket.on('error', () => undefined)
    const waiting = [...pieces]
    const timer = setInterval(() => {
      const piece = waiting.shift()
      if (piece !== undefined && socket.writable) socket.write(piece, 'latin1')
    }, pause_ms)
    socket.on('close', () => {
      clearInterval(timer)
      resolve(answer)
    })
  })
}

const HEAD = 'POST /v1/evaluations HTTP/1.1\r\nhost: localhost\r\ncontent-type: application/json\r\n'

describe('a slow or malformed sender', () => {
  it('of headers is cut off', async () => {
    const answer = await send(await server(), [...HEAD].concat(Array(400).fill('x')), 20)
    expect(answer).toMatch(/^HTTP\/1\.1 408 /)
    expect(answer).toMatch(/"status":408/)
  })

  it('of a body is cut off', async () => {
    const body = `${HEAD}content-length: 100000\r\n\r\n`
    const answer = await send(await server(), [body, ...Array(400).fill(' ')], 20)
    expect(answer).toMatch(/^HTTP\/1\.1 408 /)
  })

  it.each([
    ['headers without end', `GET / HTTP/1.1\r\nhost: localhost\r\nx: ${'y'.repeat(20_000)}\r\n\r\n`, 431],
    ['what is no HTTP', 'draught\r\n\r\n', 400],
    ['two lengths (request smuggling)', `${HEAD}content-length: 2\r\ncontent-length: 3\r\n\r\n{}`, 400],
    ['a length and chunks', `${HEAD}content-length: 2\r\ntransfer-encoding: chunked\r\n\r\n0\r\n\r\n`, 400],
    ['a line break in a header', `${HEAD}x-request-id: a\rSet-Cookie: b\r\ncontent-length: 2\r\n\r\n{}`, 400],
    ['a header without name', `${HEAD}: x\r\ncontent-length: 2\r\n\r\n{}`, 400],
    ['no host', 'GET /healthz HTTP/1.1\r\n\r\n', 400],
  ])('%s is refused with a problem', async (_what, text, status) => {
    const answer = await send(await server(), [text], 1)
    expect(answer).toMatch(new RegExp(`^HTTP/1\\.1 ${status} `))
    expect(answer).not.toMatch(/^set-cookie/im)
  })

  it('does not hold up anybody else', async () => {
    const port = await server()
    const slow = Array.from({ length: 200 }, () => send(port, [HEAD], 1))
    expect((await fetch(`http://127.0.0.1:${port}/healthz`)).status).toBe(200)
    expect((await Promise.all(slow)).every((answer) => answer.startsWith('HTTP/1.1 408'))).toBe(true)
  })
})

it('the plain server of Node would wait for a slow sender far longer', () => {
  expect(createServer().requestTimeout).toBeGreaterThan(60_000)
})
