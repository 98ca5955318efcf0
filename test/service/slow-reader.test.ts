import { createServer, type RequestListener } from 'node:http'
import { type AddressInfo, connect, type Socket } from 'node:net'
import { describe, expect, it, onTestFinished } from 'vitest'
import { makeServer } from '../../service/src/running/make-server'

/** More than the buffers of a connection hold. */
const LARGE = Buffer.alloc(32 * 1024 * 1024)

/** Serves an app with little patience; resolves to its port. */
async function serve(app: RequestListener): Promise<number> {
  const server = makeServer(app, undefined, { taken_ms: 500 })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  onTestFinished(() => {
    server.closeAllConnections()
    server.close()
  })
  return (server.address() as AddressInfo).port
}

/** Asks over a connection that takes nothing until it is told to. */
function ask(port: number) {
  const socket = connect(port, '127.0.0.1')
  onTestFinished(() => void socket.destroy())
  socket.on('error', () => undefined)
  socket.pause()
  socket.write('GET / HTTP/1.1\r\nhost: localhost\r\nconnection: close\r\n\r\n')
  return socket
}

/** How many bytes come over a connection until it is closed. */
async function bytesOf(socket: Socket): Promise<number> {
  let bytes = 0
  socket.on('data', ({ length }: Buffer) => {
    bytes += length
  })
  socket.resume()
  await new Promise((resolve) => socket.once('close', resolve))
  return bytes
}

describe('an answer', () => {
  it('that its reader does not take is given up, with its memory and its place', async () => {
    let closed: () => void = () => undefined
    const over = new Promise<void>((resolve) => {
      closed = resolve
    })
    const port = await serve((_request, response) => {
      response.once('close', closed)
      response.end(LARGE)
    })
    const socket = ask(port)
    await over
    expect(await bytesOf(socket)).toBeLessThan(LARGE.length)
  })

  it('that is taken slowly arrives whole', async () => {
    const port = await serve((_request, response) => void response.end(LARGE))
    const socket = ask(port)
    // Sixteen rests, together much longer than one may be.
    let taken = 0
    socket.on('data', ({ length }: Buffer) => {
      taken += length
      if (taken < LARGE.length / 16) return
      taken = 0
      socket.pause()
      setTimeout(() => socket.resume(), 100)
    })
    expect(await bytesOf(socket)).toBeGreaterThan(LARGE.length)
  })

  it('may take longer to make than its reader may rest', async () => {
    const port = await serve((_request, response) => {
      setTimeout(() => response.end('made'), 1500)
    })
    const socket = ask(port).resume()
    let text = ''
    socket.on('data', (piece) => {
      text += piece
    })
    await new Promise((resolve) => socket.once('close', resolve))
    expect(text).toMatch(/made$/)
  })
})

it('the plain server of Node would keep it for ever', () => {
  expect(createServer().timeout).toBe(0)
})
