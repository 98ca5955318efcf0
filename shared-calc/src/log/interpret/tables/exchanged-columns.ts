import type { KnownColumn, Segment } from './columns.js'
import { EXPONENTS, PLAIN_CURVE, type PowerLaw, PRESSURES, physicsScore, powerLaw } from './physics.js'
import type { WalkedRows } from './table-row.js'

const OF_A_BUILDING: readonly string[] = ['pressure', 'induced']

interface Chosen {
  readonly pressure: KnownColumn
  readonly carrier: { readonly columns: readonly KnownColumn[] }
  readonly walked: WalkedRows
  readonly law: PowerLaw | undefined
}

/**
 * A pressure and a flow whose numbers stand below each other's headings: the two follow a leakage curve only the other way round, as the
 * exponent of one is the inverse of the other.
 * @returns the column that then holds the pressures, and the block read so; undefined where nothing proves it
 */
export function exchangedColumns(
  segment: Segment,
  { pressure, carrier, walked, law }: Chosen,
): { pressure: KnownColumn; segment: Segment } | undefined {
  const [flow] = carrier.columns
  if (!flow || carrier.columns.length > 1 || !OF_A_BUILDING.includes(pressure.role) || flow.role !== 'flow')
    return undefined
  if (!law || law.exponent <= EXPONENTS.highest) return undefined
  const readings = walked.rows.filter(({ kind }) => kind === 'reading')
  const sizes = readings.map((row) => Math.abs(row.pressure.value))
  const others = readings.map(({ carriers }) => Math.abs(carriers[0]?.value ?? 0))
  const highest = Math.max(...others)
  if (highest > PRESSURES.most || highest < PRESSURES.reached) return undefined
  if (physicsScore(powerLaw(others, sizes)) < PLAIN_CURVE) return undefined
  const { unit: inPa, ...one } = pressure
  const { unit: ofFlow, ...other } = flow
  const columns = segment.columns.map((column): KnownColumn => {
    if (column === pressure) return { ...one, role: 'flow', ...(ofFlow ? { unit: ofFlow } : {}) }
    return column === flow ? { ...other, role: pressure.role, ...(inPa ? { unit: inPa } : {}) } : column
  })
  return { pressure: flow, segment: { ...segment, columns } }
}
