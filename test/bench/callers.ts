import { connect, type Socket } from 'node:net'

/** Requests for POST /v1/evaluations as bytes made beforehand: what the generator needs, the service beside it lacks. */
export function requestsFor(base: string, bodies: readonly string[]): Buffer[] {
  const { host } = new URL(base)
  return bodies.map((body) =>
    Buffer.from(
      `POST /v1/evaluations HTTP/1.1\r\nhost: ${host}\r\ncontent-type: application/json\r\ncontent-length: ${Buffer.byteLength(body)}\r\n\r\n${body}`,
    ),
  )
}

interface Wanted {
  readonly request: Buffer
  readonly resolve: (status: number) => void
}

/** Connections that each send one request at a time. Of the answers only the status is kept; it is 0 where the connection broke. */
export class Callers {
  private readonly idle: Socket[] = []
  private readonly all = new Set<Socket>()
  private readonly waiting: Wanted[] = []
  private readonly inHand = new Map<Socket, { wanted: Wanted; left: number; status: number }>()

  /** @param most - most connections open at once; requests beyond wait for one */
  constructor(
    private readonly port: number,
    private readonly most = 256,
  ) {}

  post(request: Buffer): Promise<number> {
    return new Promise((resolve) => {
      const wanted = { request, resolve }
      const socket = this.idle.pop() ?? (this.all.size < this.most ? this.open() : undefined)
      if (socket) this.send(socket, wanted)
      else this.waiting.push(wanted)
    })
  }

  end(): void {
    for (const socket of this.all) socket.destroy()
  }

  private send(socket: Socket, wanted: Wanted): void {
    this.inHand.set(socket, { wanted, left: Number.NaN, status: 0 })
    socket.write(wanted.request)
  }

  private open(): Socket {
    const socket = connect({ port: this.port, host: '127.0.0.1', noDelay: true })
    this.all.add(socket)
    socket.on('data', (chunk) => this.take(socket, chunk))
    socket.on('error', () => undefined)
    socket.on('close', () => {
      this.all.delete(socket)
      const place = this.idle.indexOf(socket)
      if (place >= 0) this.idle.splice(place, 1)
      this.inHand.get(socket)?.wanted.resolve(0)
      this.inHand.delete(socket)
    })
    return socket
  }

  private take(socket: Socket, chunk: Buffer): void {
    const now = this.inHand.get(socket)
    if (!now) return
    if (Number.isNaN(now.left)) {
      const head = chunk.indexOf('\r\n\r\n')
      const [, length] = /\r\ncontent-length: (\d+)/i.exec(chunk.toString('latin1', 0, head)) ?? []
      if (head < 0 || length === undefined) return void socket.destroy()
      now.status = Number(chunk.toString('latin1', 9, 12))
      now.left = Number(length) + head + 4
    }
    now.left -= chunk.length
    if (now.left > 0) return
    this.inHand.delete(socket)
    now.wanted.resolve(now.status)
    const next = this.waiting.shift()
    if (next) this.send(socket, next)
    else this.idle.push(socket)
  }
}
