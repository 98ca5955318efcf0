import { connect, type Socket } from 'node:net'

export interface Latencies {
  readonly p50_ms: number
  readonly p99_ms: number
  /** Median of those that were due in the last fifth of the time: far above the median of all where answers fall behind. */
  readonly lastP50_ms: number
  /** Requests that were not answered with 200. */
  readonly failed: number
}

export interface SteadyLoad {
  /** Requests a second. */
  readonly rate: number
  readonly seconds: number
}

/**
 * Offers requests at random times with a steady mean rate, whether or not earlier ones are answered, as independent callers do. Each is
 * timed from when it was due, so that neither a slow service nor this generator can hide a wait. (autocannon sends each second's
 * requests as fast as it can and then rests: at 70 % of what a service can do, it asks for all of it for 0.7 s.) Requests are written
 * as bytes made beforehand and answers only counted: what the generator needs, the service beside it lacks.
 */
export async function steadyLoad(
  base: string,
  bodies: readonly string[],
  { rate, seconds }: SteadyLoad,
): Promise<Latencies> {
  const { port, host } = new URL(base)
  const requests = bodies.map((body) =>
    Buffer.from(
      `POST /v1/evaluations HTTP/1.1\r\nhost: ${host}\r\ncontent-type: application/json\r\ncontent-length: ${Buffer.byteLength(body)}\r\n\r\n${body}`,
    ),
  )
  const callers = new Callers(Number(port))
  const due = arrivals(rate, seconds)
  const took = new Float64Array(due.length)
  const start = performance.now()
  const answers: Promise<void>[] = []
  for (let sent = 0; sent < due.length; ) {
    await new Promise((resolve) => setTimeout(resolve, 1))
    const now = performance.now() - start
    for (; sent < due.length && (due[sent] as number) <= now; sent++) {
      const which = sent
      answers.push(
        callers.post(requests[which % requests.length] as Buffer).then((ok) => {
          took[which] = ok ? performance.now() - start - (due[which] as number) : Number.NaN
        }),
      )
    }
  }
  await Promise.all(answers)
  callers.end()
  const good = [...took].filter((ms) => !Number.isNaN(ms))
  const late = [...took.subarray(Math.floor(0.8 * took.length))].filter((ms) => !Number.isNaN(ms))
  return {
    p50_ms: share(good, 0.5),
    p99_ms: share(good, 0.99),
    lastP50_ms: share(late, 0.5),
    failed: took.length - good.length,
  }
}

function share(values: readonly number[], part: number): number {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? Number.NaN
}

/** Answers fall behind where half of the last ones take longer than this. */
const BEHIND_ms = 50

/**
 * The highest rate of random arrivals, requests a second, that is answered without falling behind: found by raising it in steps of
 * 10 % from a rate that is answered easily.
 */
export async function steadyCapacity(base: string, bodies: readonly string[], from: number): Promise<number> {
  let held = 0
  for (let rate = from; ; rate *= 1.1) {
    const { lastP50_ms, failed } = await steadyLoad(base, bodies, { rate, seconds: 3 })
    if (failed > 0 || !(lastP50_ms < BEHIND_ms)) return held
    held = rate
  }
}

/** Times in ms, from a fixed seed, with exponential pauses between them (a Poisson process). */
function arrivals(rate: number, seconds: number): number[] {
  let seed = 12_345
  const random = () => {
    seed = (Math.imul(seed, 1_103_515_245) + 12_345) >>> 0
    return (seed + 1) / 2 ** 32
  }
  const times: number[] = []
  for (let at = 0; ; ) {
    at += (-Math.log(random()) * 1000) / rate
    if (at > 1000 * seconds) return times
    times.push(at)
  }
}

/** Most connections open at once; requests beyond wait for one. */
const MOST = 256

interface Wanted {
  readonly request: Buffer
  readonly resolve: (ok: boolean) => void
}

/** Connections that each send one request at a time. */
class Callers {
  private readonly idle: Socket[] = []
  private readonly all = new Set<Socket>()
  private readonly waiting: Wanted[] = []
  private readonly inHand = new Map<Socket, { wanted: Wanted; left: number; ok: boolean }>()

  constructor(private readonly port: number) {}

  post(request: Buffer): Promise<boolean> {
    return new Promise((resolve) => {
      const wanted = { request, resolve }
      const socket = this.idle.pop() ?? (this.all.size < MOST ? this.open() : undefined)
      if (socket) this.send(socket, wanted)
      else this.waiting.push(wanted)
    })
  }

  end(): void {
    for (const socket of this.all) socket.destroy()
  }

  private send(socket: Socket, wanted: Wanted): void {
    this.inHand.set(socket, { wanted, left: Number.NaN, ok: false })
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
      this.inHand.get(socket)?.wanted.resolve(false)
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
      now.ok = chunk.toString('latin1', 9, 12) === '200'
      now.left = Number(length) + head + 4
    }
    now.left -= chunk.length
    if (now.left > 0) return
    this.inHand.delete(socket)
    now.wanted.resolve(now.ok)
    const next = this.waiting.shift()
    if (next) this.send(socket, next)
    else this.idle.push(socket)
  }
}
