import { rowReasons } from '../../../catalogue/findings/log/runs.js'
import { type PowerLaw, powerLaw } from '../tables/physics.js'
import type { FoundRun } from '../tables/runs.js'
import type { TableRow } from '../tables/table-row.js'

/** Readings that follow one curve this well have none among them that is ten times off; so must the others of one that is. */
const ON_THE_CURVE = 0.98
/** So many others at least say where the curve is. */
const FEWEST_OTHERS = 4
/** How far from ten times a slip of the decimal point may be, as readings scatter. */
const NEAR_TEN = { least: 7.5, most: 13 } as const

/** "434 | 512" among "61.2 | 655": one reading whose decimal point is in the wrong place is a question. */
export function withTenfold(run: FoundRun): FoundRun {
  const { readings, block } = run
  if (block.law && block.law.rSquared >= ON_THE_CURVE) return run
  if (readings.length <= FEWEST_OTHERS || !isAlike(readings)) return run
  const found = readings.flatMap((row) => {
    const why = row.doubt ? undefined : slipOf(row, readings)
    return why === undefined ? [] : [{ row, why }]
  })
  const [slip, ...more] = found
  if (!slip || more.length > 0) return run
  return {
    ...run,
    readings: readings.map((row) =>
      row === slip.row ? { ...row, doubt: { kind: 'remark' as const, why: slip.why } } : row,
    ),
  }
}

/** One flow a reading, and all in the same units. */
function isAlike(readings: readonly TableRow[]): boolean {
  const units = readings.map(({ pressure, carriers, ranges }) =>
    [pressure.unit?.unit, carriers[0]?.unit?.unit, ranges[0]?.text].join(' '),
  )
  return new Set(units).size === 1 && readings.every(({ carriers }) => carriers.length === 1 && carriers[0])
}

const flowOf = ({ carriers }: TableRow): number => Math.abs(carriers[0]?.value ?? 0)
const pressureOf = ({ pressure }: TableRow): number => Math.abs(pressure.value)

/** Why a reading may be ten times off, by the curve through the others. */
function slipOf(row: TableRow, readings: readonly TableRow[]): string | undefined {
  const others = readings.filter((other) => other !== row)
  const law = powerLaw(others.map(pressureOf), others.map(flowOf))
  if (!law || law.rSquared < ON_THE_CURVE || !(law.exponent > 0)) return undefined
  return (
    slip('pressure', pressureOf(row) / pressureAt(law, flowOf(row))) ??
    slip('flow', flowOf(row) / flowAt(law, pressureOf(row)))
  )
}

const flowAt = ({ at50, exponent }: PowerLaw, pressure: number): number => at50 * (pressure / 50) ** exponent
const pressureAt = ({ at50, exponent }: PowerLaw, flow: number): number =>
  50 * (flow / at50) ** (1 / exponent)

function slip(what: 'pressure' | 'flow', ratio: number): string | undefined {
  if (ratio > NEAR_TEN.least && ratio < NEAR_TEN.most) return rowReasons.tenfold(what, 'ten times')
  if (1 / ratio > NEAR_TEN.least && 1 / ratio < NEAR_TEN.most) return rowReasons.tenfold(what, 'a tenth of')
  return undefined
}
