import { cpus, loadavg } from 'node:os'
import { type Candidate, measure, type Timing } from './measure.js'

/** Where and under what load the figures that follow were taken. */
export function machineLine(): string {
  const [cpu] = cpus()
  const load = loadavg()[0]?.toFixed(2)
  return `Node ${process.version}, ${cpus().length} × ${cpu?.model.trim() ?? 'unknown processor'}, load ${load}`
}

const amount = (us: number): string => (us < 10 ? us.toFixed(2) : us < 1000 ? us.toFixed(1) : us.toFixed(0))

/**
 * Measures what is ours against a named peer in the same run and prints each with its ratio to the peer.
 * @param goal - the largest ratio aimed at for the first candidate; a bench reports, it never fails
 */
export async function compare(
  title: string,
  peer: Candidate,
  ours: readonly Candidate[],
  goal?: number,
): Promise<readonly Timing[]> {
  const timings = await measure([peer, ...ours])
  const base = timings[0]?.median_us ?? Number.NaN
  console.log(`\n${title}`)
  for (const [i, { name, median_us, range_us }] of timings.entries()) {
    const range = `${amount(range_us[0])} to ${amount(range_us[1])}`
    const ratio = i === 0 ? 'peer' : `${(median_us / base).toPrecision(3)} ×`
    const aim =
      i === 1 && goal !== undefined
        ? ` (goal ≤ ${goal} ×${median_us / base <= goal ? ', reached' : ', not reached'})`
        : ''
    console.log(`  ${ratio.padStart(8)}  ${amount(median_us).padStart(8)} µs (${range})  ${name}${aim}`)
  }
  return timings
}
