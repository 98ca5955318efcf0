import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { evaluateInput } from '@draughtbook/shared-calc'
import { replicas } from './replicas.js'
import { load, metrics, type Server, startServer } from './service-load.js'
import { flood, fullLoad, steadyCapacity, steadyLoad } from './steady-load.js'
import { twoDirections } from './two-directions.js'

const SERVICE = join(import.meta.dirname, '../../../service/bin/draughtbook.mjs')
const COLLECT = join(import.meta.dirname, 'collect.js')
const PEER = join(import.meta.dirname, 'service-peer.js')
const ROUNDS = 5
const ROUND_S = 2
/** Of 3 s. The 1 % that p99 leaves out are 30 ms of them: one pause of the machine is longer. */
const LATENCY_ROUNDS = 9
const TESTS = 500
/** Length of the memory run; BENCH_MINUTES shortens it while working on the bench. */
const MINUTES = Number(process.env.BENCH_MINUTES ?? 5)

/** The service under load on loopback, against bare express in the same run. The load generator takes a part of the machine. */
export async function run(): Promise<void> {
  const bodies = manyTests()
  const answer = JSON.stringify(evaluateInput(twoDirections()))
  const folder = mkdtempSync(join(tmpdir(), 'draughtbook-bench-'))
  const file = join(folder, 'answer.json')
  writeFileSync(file, answer)
  const peer = await startServer([PEER, file])
  const serve = [SERVICE, 'serve', '--port', '0']
  const service = await startServer(serve)
  try {
    console.log(
      `\nThe service on loopback: ${bodies.length} bodies of ${bodies[0].length} bytes in turn, answer ${answer.length} bytes`,
    )
    const capacity = await throughput(service, peer, bodies)
    await atSeventyPercent(service, peer, bodies, capacity)
    await overloaded(service, bodies, capacity)
    await eventLoop(service, bodies[0])
    await service.stop()
    await peer.stop()
    await replicas([...serve, '--drain', '1'], [PEER, file], bodies)
    await memory(bodies, capacity)
  } finally {
    for (const { child } of [service, peer]) child.kill('SIGTERM')
    rmSync(folder, { recursive: true })
  }
}

type Bodies = readonly [string, ...string[]]

/** Tests of which no two are alike, so that nothing could be answered from memory. */
function manyTests(): Bodies {
  const [first = '', ...others] = Array.from({ length: TESTS }, (_, i) => {
    const test = twoDirections()
    test.test.id = `B-${100 + i}`
    test.building.volume_m3 += i / 10
    for (const run of test.runs)
      for (const reading of run.readings) reading.flow_m3_h = Math.round(reading.flow_m3_h * 10 + i) / 10
    return JSON.stringify(test)
  })
  return [first, ...others]
}

const median = (values: readonly number[]) =>
  [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN

/**
 * Alternating rounds, so that whatever else the machine does strikes both alike; with a generator that needs little of the machine,
 * and with a well-known one that needs more of it.
 */
async function throughput(service: Server, peer: Server, bodies: Bodies): Promise<number> {
  const options = { seconds: ROUND_S, connections: 20 }
  const generators = {
    'ready-made requests': (base: string) => fullLoad(base, bodies, options),
    autocannon: async (base: string) => (await load(base, bodies, options)).good,
  }
  for (const { base } of [service, peer]) await fullLoad(base, bodies, { seconds: 3, connections: 20 })
  console.log('  bare express parses the JSON and answers a constant')
  let capacity = 0
  for (const [name, offer] of Object.entries(generators)) {
    const [ours, theirs]: [number[], number[]] = [[], []]
    for (let round = 0; round < ROUNDS; round++) {
      theirs.push(await offer(peer.base))
      ours.push(await offer(service.base))
    }
    const ratio = median(ours) / median(theirs)
    capacity = median(ours)
    console.log(
      `  ${ratio.toFixed(2)} ×    ${capacity.toFixed(0)} a second at /v1/evaluations, ${median(theirs).toFixed(0)} of bare express, asked with ${name} (goal ≥ 0.6 ×, ${ratio >= 0.6 ? 'reached' : 'not reached'})`,
    )
  }
  return capacity
}

/**
 * Beside bare express at the same rate: what it waits there is the machine's and the generator's. 70 % is of what the same generator
 * finds the service able to answer, with the same kind of arrivals: it needs more of the machine than one that waits for answers.
 */
async function atSeventyPercent(
  service: Server,
  peer: Server,
  bodies: Bodies,
  capacity: number,
): Promise<void> {
  const able = await steadyCapacity(service.base, bodies, capacity / 3)
  const ceiling = await steadyCapacity(peer.base, bodies, able)
  const rate = 0.7 * able
  const [ours, theirs, late]: [number[], number[], number[]] = [[], [], []]
  let failed = 0
  for (let round = 0; round < LATENCY_ROUNDS; round++)
    for (const [{ base }, into] of [
      [peer, theirs],
      [service, ours],
    ] as const) {
      const latencies = await steadyLoad(base, bodies, { rate, seconds: 3 })
      into.push(latencies.p99_ms)
      late.push(latencies.generatorP99_ms)
      failed += latencies.failed
    }
  const [p99, bare] = [median(ours), median(theirs)]
  console.log(
    `  at random times ${able.toFixed(0)} a second are answered without falling behind; bare express ${ceiling.toFixed(0)}, the ceiling of this machine and generator`,
  )
  console.log(
    `  at 70 % of that (${rate.toFixed(0)} a second): p99 ${p99.toFixed(1)} ms (goal ≤ 20 ms, ${p99 <= 20 ? 'reached' : 'not reached'}); bare express at the same rate ${bare.toFixed(1)} ms (${(p99 / bare).toFixed(1)} ×); the generator itself sends ${median(late).toFixed(1)} ms late at its p99; ${failed} not answered`,
  )
}

/** Three times as much as can be served: what is turned away must be told so, and the rest served. */
async function overloaded(service: Server, bodies: Bodies, capacity: number): Promise<void> {
  const { base, child } = service
  const { statuses, good_per_s } = await flood(base, bodies, {
    seconds: 8,
    connections: 1500,
    rate: 3 * capacity,
  })
  const end = performance.now()
  let slow = Number.POSITIVE_INFINITY
  while (slow > 50 && performance.now() - end < 30_000) {
    const start = performance.now()
    const { status } = await fetch(`${base}/v1/evaluations`, {
      method: 'POST',
      body: bodies[0],
      headers: { 'content-type': 'application/json' },
    })
    slow = status === 200 ? performance.now() - start : Number.POSITIVE_INFINITY
    await wait(20)
  }
  const recovered = ((performance.now() - end) / 1000).toFixed(2)
  const broken = statuses.get(0) ?? 0
  const counts = [200, 503].map((status) => `${statuses.get(status) ?? 0} × ${status}`)
  const alive = child.exitCode === null ? 'alive' : 'ended'
  console.log(
    `  offered 3 times that: ${counts.join(', ')}, ${broken} broken connections; ${good_per_s.toFixed(0)} good answers a second; ${alive}, answering within 50 ms again after ${recovered} s`,
  )
}

/** Workbooks and large bodies on the workers while small evaluations go on. */
async function eventLoop({ base }: Server, body: string): Promise<void> {
  await metrics(base)
  const end = performance.now() + 10_000
  const headers = { 'content-type': 'application/json' }
  const large = twoDirections()
  for (const run of large.runs)
    run.readings = Array.from({ length: 900 }, (_, i) => ({
      pressure_Pa: 10 + i / 15,
      flow_m3_h: 40 + i / 10,
    }))
  const post = async (path: string, sent: string) => {
    while (performance.now() < end)
      await (await fetch(base + path, { method: 'POST', body: sent, headers })).arrayBuffer()
  }
  const texts = [body, JSON.stringify(large)] as const
  await Promise.all([
    ...Array.from({ length: 4 }, () => post('/v1/workbooks', texts[0])),
    ...Array.from({ length: 2 }, () => post('/v1/evaluations', texts[1])),
    post('/v1/evaluations', texts[0]),
  ])
  const now = await metrics(base)
  const [max, p99] = [now('nodejs_eventloop_lag_max_seconds'), now('nodejs_eventloop_lag_p99_seconds')]
  console.log(
    `  event loop while workbooks and large bodies are worked on: p99 ${(1e3 * p99).toFixed(0)} ms, longest ${(1e3 * max).toFixed(0)} ms (goal: never above 50 ms)`,
  )
}

/**
 * Slope of memory in use under half load, by least squares over the samples after the first fifth; in a service of its
 * own that collects every few seconds, as its heap would else rise and fall by chance.
 */
async function memory(bodies: Bodies, capacity: number): Promise<void> {
  const service = await startServer(['--expose-gc', '--import', COLLECT, SERVICE, 'serve', '--port', '0'])
  const { base, child } = service
  const seconds = Math.round(60 * MINUTES)
  let printed = 0
  const samples: { minutes: number; resident: number; heap: number }[] = []
  const start = performance.now()
  child.stderr?.on('data', async (chunk: Buffer) => {
    const [, heap] = /^heap (\d+)$/m.exec(chunk.toString()) ?? []
    if (!heap) return
    const minutes = (performance.now() - start) / 60_000
    const resident = (await metrics(base))('process_resident_memory_bytes') / 2 ** 20
    samples.push({ minutes, resident, heap: Number(heap) / 2 ** 20 })
    if (Math.floor(minutes) > printed) {
      printed = Math.floor(minutes)
      console.log(
        `    after ${printed}: resident ${resident.toFixed(0)} MB, heap ${(Number(heap) / 2 ** 20).toFixed(1)} MB`,
      )
    }
  })
  console.log(`  memory at 50 % for ${MINUTES} minutes:`)
  const { statuses, broken } = await load(base, bodies, { seconds, connections: 20, rate: 0.5 * capacity })
  child.stderr?.removeAllListeners('data').resume()
  await service.stop()
  const late = samples.slice(Math.floor(samples.length / 5))
  const [first, last] = [late[0], late.at(-1)]
  console.log(
    `    (${statuses['200'] ?? 0} answers, ${broken} broken): resident ${first?.resident.toFixed(0)} to ${last?.resident.toFixed(0)} MB, slope ${slope(late, 'resident').toFixed(2)} MB a minute; heap after collections ${first?.heap.toFixed(1)} to ${last?.heap.toFixed(1)} MB, slope ${slope(late, 'heap').toFixed(2)} MB a minute`,
  )
}

function slope(
  samples: readonly { minutes: number; resident: number; heap: number }[],
  name: 'resident' | 'heap',
): number {
  const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
  const x = samples.map(({ minutes }) => minutes)
  const y = samples.map((sample) => sample[name])
  const [mx, my] = [mean(x), mean(y)]
  const sxy = x.reduce((sum, value, i) => sum + (value - mx) * ((y[i] ?? 0) - my), 0)
  return sxy / x.reduce((sum, value) => sum + (value - mx) ** 2, 0)
}
