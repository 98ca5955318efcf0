import { Callers, requestsFor } from './callers.js'

export interface Latencies {
  readonly p50_ms: number
  readonly p99_ms: number
  /** Median of those that were due in the last fifth of the time: far above the median of all where answers fall behind. */
  readonly lastP50_ms: number
  /** How late the generator itself was in sending, of which the service knows nothing. */
  readonly generatorP99_ms: number
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
 * requests as fast as it can and then rests: at 70 % of what a service can do, it asks for all of it for 0.7 s.)
 */
export async function steadyLoad(
  base: string,
  bodies: readonly string[],
  { rate, seconds }: SteadyLoad,
): Promise<Latencies> {
  const requests = requestsFor(base, bodies)
  const callers = new Callers(Number(new URL(base).port))
  const due = arrivals(rate, seconds)
  const took = new Float64Array(due.length)
  const late = new Float64Array(due.length)
  const start = performance.now()
  const answers: Promise<void>[] = []
  for (let sent = 0; sent < due.length; ) {
    await new Promise((resolve) => setTimeout(resolve, 1))
    const now = performance.now() - start
    for (; sent < due.length && (due[sent] as number) <= now; sent++) {
      const which = sent
      late[which] = now - (due[which] as number)
      answers.push(
        callers.post(requests[which % requests.length] as Buffer).then((status) => {
          took[which] = status === 200 ? performance.now() - start - (due[which] as number) : Number.NaN
        }),
      )
    }
  }
  await Promise.all(answers)
  callers.end()
  const good = [...took].filter((ms) => !Number.isNaN(ms))
  const last = [...took.subarray(Math.floor(0.8 * took.length))].filter((ms) => !Number.isNaN(ms))
  return {
    p50_ms: share(good, 0.5),
    p99_ms: share(good, 0.99),
    lastP50_ms: share(last, 0.5),
    generatorP99_ms: share([...late], 0.99),
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
 * 12 % from a rate that is answered easily. A rate counts as too high when it was so twice: the machine stands still now and then.
 */
export async function steadyCapacity(base: string, bodies: readonly string[], from: number): Promise<number> {
  const holds = async (rate: number): Promise<boolean> => {
    const { lastP50_ms, failed } = await steadyLoad(base, bodies, { rate, seconds: 2 })
    return failed === 0 && lastP50_ms < BEHIND_ms
  }
  let held = 0
  for (let rate = from; (await holds(rate)) || (await holds(rate)); rate *= 1.12) held = rate
  return held
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

/** Good answers a second of a number of connections that each ask again once they are answered. */
export async function fullLoad(
  base: string,
  bodies: readonly string[],
  { seconds, connections }: { readonly seconds: number; readonly connections: number },
): Promise<number> {
  const requests = requestsFor(base, bodies)
  const callers = new Callers(Number(new URL(base).port))
  const start = performance.now()
  let [sent, good] = [0, 0]
  const askOnAndOn = async (): Promise<void> => {
    while (performance.now() - start < 1000 * seconds)
      if ((await callers.post(requests[sent++ % requests.length] as Buffer)) === 200) good++
  }
  await Promise.all(Array.from({ length: connections }, askOnAndOn))
  const took_s = (performance.now() - start) / 1000
  callers.end()
  return good / took_s
}

/** Answers by status; 0 stands for a connection that broke. */
export interface Flood {
  readonly statuses: ReadonlyMap<number, number>
  readonly good_per_s: number
}

/**
 * More than can be answered, at a steady rate, over many connections: what is not answered at once does not slow down what comes. (With
 * so many connections autocannon takes most of the machine itself.)
 */
export async function flood(
  base: string,
  bodies: readonly string[],
  { rate, seconds, connections }: SteadyLoad & { readonly connections: number },
): Promise<Flood> {
  const requests = requestsFor(base, bodies)
  const callers = new Callers(Number(new URL(base).port), connections)
  const statuses = new Map<number, number>()
  const answers: Promise<void>[] = []
  const start = performance.now()
  for (const due of arrivals(rate, seconds)) {
    while (performance.now() - start < due) await new Promise((resolve) => setTimeout(resolve, 1))
    const answer = callers.post(requests[answers.length % requests.length] as Buffer)
    answers.push(answer.then((status) => void statuses.set(status, (statuses.get(status) ?? 0) + 1)))
  }
  await Promise.all(answers)
  const took_s = (performance.now() - start) / 1000
  callers.end()
  return { statuses, good_per_s: (statuses.get(200) ?? 0) / took_s }
}
