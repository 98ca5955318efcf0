import {
  type ColumnsCurve,
  curveFigures,
  curveOfColumns,
  type FigureDefinition,
  moistAirDensity,
  nameWithSymbol,
  results,
  unitText,
} from '@draughtbook/shared-calc'
import { ArgumentFault, type Given, type GivenRange, numberArgument, pairsArgument } from './arguments.js'
import type { FunctionId } from './table.js'

/** What Excel hands over behind the arguments. */
export interface Invocation {
  parameterAddresses?: string[]
}
type Cell = number | string
type Result = number | Cell[][]
// Excel calls every function with its arguments in the table's order; each function checks its own.
type Implementation = (values: readonly unknown[], where: readonly (string | undefined)[]) => Result

function curve(values: readonly unknown[], where: readonly (string | undefined)[]): ColumnsCurve {
  const pairs = pairsArgument(values[0] as GivenRange, values[1] as GivenRange, {
    ...(where[0] === undefined ? {} : { pressures: where[0] }),
    ...(where[1] === undefined ? {} : { flows: where[1] }),
  })
  return curveOfColumns(pairs.pressures, pairs.flows)
}

/** A pressure left out takes the standard one; the function's description says which. */
const pressureAt = (value: unknown, where: string | undefined, standard: number): number =>
  value === null || value === undefined || value === ''
    ? standard
    : numberArgument(value as Given, 'at', where, 0)

const rate =
  (basis: 'volume' | 'envelope' | 'floor', name: string): Implementation =>
  (values, where) =>
    curve(values, where).rate(
      pressureAt(values[3], where[3], 50),
      basis,
      numberArgument(values[2] as Given, name, where[2], 0),
    )

/** The code behind each name of the table. Every figure comes from the shared calculation. */
export const implementations: Record<FunctionId, Implementation> = {
  AIRCHANGERATE: rate('volume', 'volume'),
  LEAKAGEPERENVELOPE: rate('envelope', 'area'),
  LEAKAGEPERFLOOR: rate('floor', 'area'),
  LEAKAGECOEFFICIENT: (values, where) => curve(values, where).airLeakageCoefficient.value,
  FLOWEXPONENT: (values, where) => {
    const { value, lower, upper } = curve(values, where).airFlowExponent
    return [[value, lower, upper]]
  },
  FLOWATPRESSURE: (values, where) =>
    curve(values, where).at(numberArgument(values[2] as Given, 'at', where[2], 0)).value,
  LEAKAGEAREA: (values, where) => curve(values, where).leakageArea(pressureAt(values[2], where[2], 4)),
  DETERMINATION: (values, where) => curve(values, where).rSquared,
  LEAKAGECURVE: (values, where) => table(curve(values, where)),
  AIRDENSITY: (values, where) => {
    const [temperature, humidity, pressure] = ['temperature', 'humidity', 'pressure'].map((name, place) =>
      numberArgument(values[place] as Given, name, where[place]),
    ) as [number, number, number]
    if (humidity < 0 || humidity > 1)
      throw new ArgumentFault(`humidity is ${humidity}; it must be between 0 and 1`)
    if (temperature < -60 || temperature > 60)
      throw new ArgumentFault(`temperature is ${temperature} °C; it must be between −60 and 60`)
    if (pressure < 45_000 || pressure > 115_000)
      throw new ArgumentFault(`pressure is ${pressure} Pa; it must be between 45000 and 115000`)
    return moistAirDensity(temperature, humidity, pressure)
  },
}

function table(of: ColumnsCurve): Cell[][] {
  const row = (of: FigureDefinition, value: number, lower: Cell = '', upper: Cell = ''): Cell[] => [
    of.name,
    value,
    lower,
    upper,
    unitText(of.unit),
  ]
  const { airLeakageCoefficient: c, airFlowExponent: n, rSquared, readings } = of
  const q = of.at(50)
  return [
    ['quantity', 'value', '95 % from', '95 % to', 'unit'],
    row(curveFigures.airLeakageCoefficient, c.value, c.lower, c.upper),
    row(curveFigures.airFlowExponent, n.value, n.lower, n.upper),
    row(results.q50, q.value, q.lower, q.upper),
    row(results.ela4, of.leakageArea(4)),
    row({ ...curveFigures.rSquared, name: nameWithSymbol(curveFigures.rSquared) }, rSquared),
    ['readings', readings, '', '', ''],
  ]
}

/**
 * Calls a function as Excel does: arguments, then the invocation.
 * @throws ArgumentFault in words that name the argument and its cell
 */
export function call(id: FunctionId, values: readonly unknown[], invocation: Invocation): Result {
  const result = implementations[id](values, invocation.parameterAddresses ?? [])
  if (typeof result === 'number' && !Number.isFinite(result))
    throw new ArgumentFault('the readings give no finite result')
  return result
}
