import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import autocannon from 'autocannon'

export interface Server {
  readonly base: string
  readonly child: ChildProcess
  stop(): Promise<unknown>
}

/** Starts a server process that says where it listens. */
export async function startServer(args: readonly string[]): Promise<Server> {
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'pipe'] })
  const base = await new Promise<string>((resolve, reject) => {
    let text = ''
    const look = (chunk: Buffer) => {
      // Only until the address is found; what follows is the log, read and dropped.
      if (text === 'found') return
      text += chunk.toString()
      const [, url] = /^draughtbook: (http:\S+)$/m.exec(text) ?? []
      if (url) {
        text = 'found'
        resolve(url)
      }
    }
    child.stdout?.on('data', look)
    child.stderr?.on('data', look)
    child.once('exit', (code) => reject(new Error(`ended with ${code}: ${text}`)))
  })
  const ended = once(child, 'exit')
  return {
    base,
    child,
    stop: () => {
      child.kill('SIGTERM')
      return ended
    },
  }
}

export interface LoadOptions {
  readonly seconds: number
  readonly connections: number
  /** Requests a second to offer; left out: as many as are answered. */
  readonly rate?: number
}

export interface Load {
  /** Answers a second, of any status. */
  readonly answered: number
  /** Good answers a second. */
  readonly good: number
  readonly p50_ms: number
  readonly p99_ms: number
  readonly statuses: Readonly<Record<string, number>>
  /** Connections that broke or timed out. */
  readonly broken: number
}

/** Loads POST /v1/evaluations with each of the bodies in turn. */
export async function load(base: string, bodies: readonly string[], options: LoadOptions): Promise<Load> {
  const { seconds, connections, rate } = options
  const result = await autocannon({
    url: `${base}/v1/evaluations`,
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    requests: bodies.map((body) => ({ body })),
    connections,
    duration: seconds,
    timeout: 20,
    ...(rate !== undefined && { overallRate: Math.max(1, Math.round(rate)) }),
  })
  const statuses = Object.fromEntries(
    Object.entries(result.statusCodeStats ?? {}).map(([status, { count = 0 }]) => [status, count]),
  )
  const answers = Object.values(statuses).reduce((sum, count) => sum + count, 0)
  return {
    answered: answers / result.duration,
    good: (statuses['200'] ?? 0) / result.duration,
    p50_ms: result.latency.p50,
    p99_ms: result.latency.p99,
    statuses,
    broken: result.errors + result.timeouts,
  }
}

/** Figures of the service's own metrics, by name, of one look: some start anew after each. */
export async function metrics(base: string): Promise<(name: string) => number> {
  const text = await (await fetch(`${base}/metrics`)).text()
  return (name) => Number(new RegExp(`^${name} (\\S+)$`, 'm').exec(text)?.[1])
}
