import { Agent, request } from 'node:http'

export interface Latencies {
  readonly p50_ms: number
  readonly p99_ms: number
  /** Requests that were not answered with 200. */
  readonly failed: number
}

/**
 * Offers requests at random times with a steady mean rate, whether or not earlier ones are answered, as independent callers do. Each is
 * timed from when it was due, so that neither a slow service nor this generator can hide a wait. (autocannon sends each second's
 * requests as fast as it can and then rests: at 70 % of what a service can do, it asks for all of it for 0.7 s.)
 */
export async function steadyLoad(
  base: string,
  bodies: readonly string[],
  { rate, seconds }: { readonly rate: number; readonly seconds: number },
): Promise<Latencies> {
  const agent = new Agent({ keepAlive: true, maxSockets: 256 })
  const due = arrivals(rate, seconds)
  const start = performance.now()
  const answers: Promise<number>[] = []
  for (let sent = 0; sent < due.length; ) {
    await new Promise((resolve) => setTimeout(resolve, 1))
    const now = performance.now() - start
    for (; sent < due.length && (due[sent] as number) <= now; sent++) {
      const at = start + (due[sent] as number)
      answers.push(
        post(agent, base, bodies[sent % bodies.length] as string).then((ok) =>
          ok ? performance.now() - at : Number.NaN,
        ),
      )
    }
  }
  const all = await Promise.all(answers)
  agent.destroy()
  const sorted = all.filter((ms) => !Number.isNaN(ms)).sort((a, b) => a - b)
  const share = (part: number) =>
    sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? Number.NaN
  return { p50_ms: share(0.5), p99_ms: share(0.99), failed: all.length - sorted.length }
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

const post = (agent: Agent, base: string, body: string): Promise<boolean> =>
  new Promise((resolve) => {
    const sent = request(
      `${base}/v1/evaluations`,
      {
        method: 'POST',
        agent,
        headers: { 'content-type': 'application/json', 'content-length': Buffer.byteLength(body) },
      },
      (response) => {
        response.resume().once('end', () => resolve(response.statusCode === 200))
        response.once('error', () => resolve(false))
      },
    )
    sent.once('error', () => resolve(false))
    sent.end(body)
  })
