import type { KnownColumn } from './columns.js'
import { physicsScore, powerLaw } from './physics.js'
import type { Segment } from './segments.js'

/** Least points of physics at which two columns without a word are readings: an exponent between 0.45 and 1.05, r² from 0.98. */
export const PLAIN_CURVE = 1

/** Every two of them are tried; a table of readings that nobody headed is not wider. */
const MOST_UNNAMED = 12

/** Building pressures that are read, Pa: at least so much at most, and never more. */
const PRESSURES = { reached: 15, beyond: 160 }

/**
 * Gives columns without a heading the role that the leakage curve through them proves, where the headings leave out the
 * pressure or the flow. Turned round, pressure and flow have an exponent beyond 1, so that the two cannot be confused.
 */
export function withUnnamed(segment: Segment): { segment: Segment; unnamed: readonly KnownColumn[] } {
  const none = { segment, unnamed: [] }
  const { columns } = segment
  const has = (...roles: readonly string[]) =>
    columns.some(({ role, numbers }) => roles.includes(role) && numbers > 0)
  const [pressure, flow] = [has('pressure', 'induced', 'device'), has('flow', 'corrected', 'device')]
  if (pressure && flow) return none
  // Among headings that speak of other things a pair of unnamed columns is somebody else's.
  if (!pressure && !flow && columns.some(({ label }) => label.text !== '')) return none
  const free = columns
    .filter(({ role, label, numbers }) => role === 'other' && label.text === '' && numbers >= 3)
    .slice(0, MOST_UNNAMED)
  const pressures = pressure ? columns.filter(({ role }) => role === 'pressure' || role === 'induced') : free
  const flows = flow ? columns.filter(({ role }) => role === 'flow' || role === 'corrected') : free
  let best: { pressure: KnownColumn; flow: KnownColumn; score: number } | undefined
  for (const one of pressures)
    for (const other of flows) {
      if (one === other) continue
      const score = scoreOf(segment, one, other)
      if (score >= PLAIN_CURVE && score > (best?.score ?? 0)) best = { pressure: one, flow: other, score }
    }
  if (!best) return none
  const named = columns.map((column): KnownColumn => {
    if (column === best.pressure && !pressure) return { ...column, role: 'pressure' }
    return column === best.flow && !flow ? { ...column, role: 'flow' } : column
  })
  return {
    segment: { ...segment, columns: named },
    unnamed: named.filter((column, index) => column !== columns[index]),
  }
}

function scoreOf({ view, head }: Segment, pressure: KnownColumn, flow: KnownColumn): number {
  const pairs: [number, number][] = []
  for (let row = head.first; row < Math.min(view.rows, head.first + 40); row++) {
    const [p, q] = [view.number(row, pressure.at), view.number(row, flow.at)]
    if (p === undefined && q === undefined && pairs.length > 0) break
    if (p !== undefined && q !== undefined && q !== 0) pairs.push([p, Math.abs(q)])
  }
  const sizes = pairs.map(([p]) => Math.abs(p))
  if (Math.max(...sizes) < PRESSURES.reached || Math.max(...sizes) > PRESSURES.beyond)
    return Number.NEGATIVE_INFINITY
  return physicsScore(
    powerLaw(
      pairs.map(([p]) => p),
      pairs.map(([, q]) => q),
    ),
  )
}
