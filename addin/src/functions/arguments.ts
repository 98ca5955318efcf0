import { fewestReadings } from '@draughtbook/shared-calc'
import { columnLetters, parseArea, splitReference } from '../host/address.js'

/** A cell as Excel hands it to a function. */
export type Given = string | number | boolean | null | undefined
export type GivenRange = readonly (readonly Given[])[]

/** Something wrong with an argument, in words that name the cell. Shown as #VALUE! with this message. */
export class ArgumentFault extends Error {
  override readonly name = 'ArgumentFault'
}

const isBlank = (value: Given): boolean => value === null || value === undefined || value === ''

/** One number. @param where the argument's address, as in `Log!C4`, where it is a cell */
export function numberArgument(
  value: Given,
  name: string,
  where: string | undefined,
  least = Number.NEGATIVE_INFINITY,
): number {
  if (typeof value !== 'number' || !Number.isFinite(value))
    throw new ArgumentFault(`${name}${inCell(where)} is ${shown(value)}, not a number`)
  if (value <= least)
    throw new ArgumentFault(`${name}${inCell(where)} is ${value}; it must be above ${least}`)
  return value
}

/** The pairs of two ranges, place by place; places where both are blank are not readings. */
export function pairsArgument(
  pressures: GivenRange,
  flows: GivenRange,
  where: { pressures?: string; flows?: string },
): { pressures: number[]; flows: number[] } {
  const first = pressures.flat()
  const second = flows.flat()
  if (first.length !== second.length)
    throw new ArgumentFault(
      `pressures has ${first.length} cells and flows ${second.length}: they must have the same number`,
    )
  const pairs = { pressures: [] as number[], flows: [] as number[] }
  first.forEach((pressure, place) => {
    const flow = second[place]
    if (isBlank(pressure) && isBlank(flow)) return
    const [here, there] = [cellAt(where.pressures, pressures, place), cellAt(where.flows, flows, place)]
    const value = numberArgument(pressure, 'pressure', here)
    if (value === 0) throw new ArgumentFault(`pressure${inCell(here)} is 0: there is no flow to fit at 0 Pa`)
    pairs.pressures.push(value)
    pairs.flows.push(numberArgument(flow, 'flow', there, 0))
  })
  const fewest = fewestReadings(undefined)
  if (pairs.pressures.length < fewest)
    throw new ArgumentFault(`${pairs.pressures.length} readings: a curve needs at least ${fewest}`)
  if (pairs.pressures.every((pressure) => Math.abs(pressure) === Math.abs(pairs.pressures[0] ?? 0)))
    throw new ArgumentFault('all readings are at one pressure: a curve needs more than one')
  return pairs
}

const inCell = (where: string | undefined): string => (where === undefined ? '' : ` in ${where}`)

const shown = (value: Given): string =>
  isBlank(value) ? 'empty' : typeof value === 'string' ? `the text "${value.slice(0, 40)}"` : String(value)

/** Address of the nth cell of a range, row by row. */
function cellAt(where: string | undefined, range: GivenRange, place: number): string | undefined {
  if (where === undefined) return undefined
  const { sheet, address } = splitReference(where)
  const area = parseArea(address)
  const width = range[0]?.length ?? 1
  if (!area) return where
  const cell = `${columnLetters(area.left + (place % width))}${area.top + Math.floor(place / width)}`
  return sheet === undefined ? cell : `${sheet}!${cell}`
}
