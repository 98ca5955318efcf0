/** One thing to measure: `run` does it once and returns something, so that it cannot be optimised away. */
export interface Candidate {
  readonly name: string
  readonly run: () => unknown
}

export interface Timing {
  readonly name: string
  /** Median over the rounds, in microseconds a call. */
  readonly median_us: number
  /** Fastest and slowest round, in microseconds a call. */
  readonly range_us: readonly [number, number]
}

const ROUNDS = 31
const ROUND_MS = 20
const WARM_UP_MS = 300

/** What the runs returned last: reading it somewhere keeps them from being optimised away. */
export let kept: unknown

/**
 * Times candidates in turn, round by round, so that whatever else the machine does strikes all of them alike. The garbage
 * collector is left to itself: forced between rounds it throws compiled code away and triples what is measured.
 * Asynchronous candidates are awaited.
 */
export async function measure(candidates: readonly Candidate[]): Promise<Timing[]> {
  const calls = []
  for (const { run } of candidates) calls.push(await callsInRound(run))
  const rounds = candidates.map(() => [] as number[])
  for (let round = 0; round < ROUNDS; round += 1)
    for (const [i, { run }] of candidates.entries()) {
      rounds[i]?.push(await timed(run, calls[i] ?? 1))
    }
  return candidates.map(({ name }, i) => {
    const sorted = (rounds[i] ?? []).sort((a, b) => a - b)
    const at = (share: number) => sorted[Math.round(share * (sorted.length - 1))] ?? Number.NaN
    return { name, median_us: at(0.5), range_us: [at(0), at(1)] }
  })
}

async function callsInRound(run: Candidate['run']): Promise<number> {
  let calls = 0
  const start = performance.now()
  while (performance.now() - start < WARM_UP_MS) {
    await timed(run, 1)
    calls += 1
  }
  // Warm by now: one more round of that many calls tells how many fill a round.
  const each_us = await timed(run, calls)
  return Math.max(1, Math.round((ROUND_MS * 1000) / each_us))
}

async function timed(run: Candidate['run'], calls: number): Promise<number> {
  const start = performance.now()
  for (let i = 0; i < calls; i += 1) {
    kept = run()
    if (kept instanceof Promise) kept = await kept
  }
  return ((performance.now() - start) * 1000) / calls
}
