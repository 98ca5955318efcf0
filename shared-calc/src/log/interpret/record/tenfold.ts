import { rowReasons } from '../../../catalogue/findings/log/runs.js'
import { EXPONENTS, type PowerLaw, powerLaw } from '../tables/physics.js'
import type { FoundRun } from '../tables/runs.js'
import type { TableRow } from '../tables/table-row.js'

/** Readings that follow one curve this well have none among them that is ten times off; so must the others of one that is. */
const ON_THE_CURVE = 0.98
/** So many others at least say where the curve is. */
const FEWEST_OTHERS = 4
/** Every two of them are tried. */
const MOST_READINGS = 20
/** How far from ten times a slip of the decimal point may be, as readings scatter. */
const NEAR_TEN = { least: 7.5, most: 13 } as const

/** "434 | 512" among "61.2 | 655": readings whose decimal point is in the wrong place, fewer than half, are a question. */
export function withTenfold(run: FoundRun): FoundRun {
  const { readings, block } = run
  if (block.law && block.law.rSquared >= ON_THE_CURVE) return run
  if (readings.length > MOST_READINGS || !isAlike(readings)) return run
  const slips =
    onlyOne(readings.map((row) => [row])) ?? onlyOne(pairsOf(readings)) ?? onlyOne(groupsOffCurves(readings))
  if (!slips) return run
  return {
    ...run,
    readings: readings.map((row) => {
      const why = slips.get(row)
      return why === undefined ? row : { ...row, doubt: { kind: 'remark' as const, why } }
    }),
  }

  /** The slips of one of these groups of readings, where no other group explains the run too. */
  function onlyOne(groups: readonly (readonly TableRow[])[]): Slips | undefined {
    const [found, ...more] = groups.flatMap((rows) => slipsOf(rows, readings) ?? [])
    return more.length > 0 ? undefined : found
  }
}

type Slips = ReadonlyMap<TableRow, string>

const pairsOf = (rows: readonly TableRow[]): TableRow[][] =>
  rows.flatMap((row, index) => rows.slice(index + 1).map((other) => [row, other]))

/** How far from a curve through two readings the others on it may be. */
const NEAR_CURVE = 0.3

/**
 * Three readings and more, fewer than half: those that are off a curve through two others. The groups with the fewest are returned, each once.
 */
function groupsOffCurves(readings: readonly TableRow[]): TableRow[][] {
  const groups = new Map<string, TableRow[]>()
  for (const [one, other] of pairsOf(readings)) {
    const law = one && other && curveThrough(one, other)
    if (!law) continue
    const off = readings.filter((row) => {
      const ratio = flowOf(row) / flowAt(law, pressureOf(row))
      return !(Math.abs(Math.log(ratio)) < NEAR_CURVE)
    })
    if (off.length > 2 && 2 * off.length < readings.length) groups.set(off.map(({ row }) => row).join(), off)
  }
  const fewest = Math.min(...[...groups.values()].map(({ length }) => length))
  return [...groups.values()].filter(({ length }) => length === fewest)
}

/** The curve through two readings whose pressures are far enough apart to give one. */
function curveThrough(one: TableRow, other: TableRow): Omit<PowerLaw, 'rSquared'> | undefined {
  const apart = Math.log(pressureOf(one) / pressureOf(other))
  if (!(Math.abs(apart) > FAR_APART)) return undefined
  const exponent = Math.log(flowOf(one) / flowOf(other)) / apart
  if (!(exponent > EXPONENTS.lowest && exponent < EXPONENTS.highest)) return undefined
  return { exponent, at50: flowOf(one) * (50 / pressureOf(one)) ** exponent }
}

/** Of two pressures nearer to each other the scatter makes any exponent: ln 1.5. */
const FAR_APART = 0.4

/** One flow a reading, and all in the same units. */
function isAlike(readings: readonly TableRow[]): boolean {
  const units = readings.map(({ pressure, carriers, ranges }) =>
    [pressure.unit?.unit, carriers[0]?.unit?.unit, ranges[0]?.text].join(' '),
  )
  return new Set(units).size === 1 && readings.every(({ carriers }) => carriers.length === 1 && carriers[0])
}

const flowOf = ({ carriers }: TableRow): number => Math.abs(carriers[0]?.value ?? 0)
const pressureOf = ({ pressure }: TableRow): number => Math.abs(pressure.value)

/** Why each of some readings may be ten times off, by the curve through the others. */
function slipsOf(rows: readonly TableRow[], readings: readonly TableRow[]): Slips | undefined {
  const others = readings.filter((row) => !rows.includes(row))
  if (others.length < FEWEST_OTHERS || rows.some(({ doubt }) => doubt)) return undefined
  const law = powerLaw(others.map(pressureOf), others.map(flowOf))
  if (!law || law.rSquared < ON_THE_CURVE || !(law.exponent > 0)) return undefined
  const slips = new Map<TableRow, string>()
  for (const row of rows) {
    const why =
      slip('pressure', pressureOf(row) / pressureAt(law, flowOf(row))) ??
      slip('flow', flowOf(row) / flowAt(law, pressureOf(row)))
    if (why === undefined) return undefined
    slips.set(row, why)
  }
  return slips
}

const flowAt = ({ at50, exponent }: Omit<PowerLaw, 'rSquared'>, pressure: number): number =>
  at50 * (pressure / 50) ** exponent
const pressureAt = ({ at50, exponent }: PowerLaw, flow: number): number =>
  50 * (flow / at50) ** (1 / exponent)

function slip(what: 'pressure' | 'flow', ratio: number): string | undefined {
  if (ratio > NEAR_TEN.least && ratio < NEAR_TEN.most) return rowReasons.tenfold(what, 'ten times')
  if (1 / ratio > NEAR_TEN.least && 1 / ratio < NEAR_TEN.most) return rowReasons.tenfold(what, 'a tenth of')
  return undefined
}
