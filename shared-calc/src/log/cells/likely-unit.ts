import { runText } from '../../catalogue/findings/log/runs.js'
import type { Remark } from '../../catalogue/findings/remark.js'
import type { KnownUnit } from './units.js'

const PA: KnownUnit = { kind: 'pressure', unit: 'Pa' }
const CELSIUS: KnownUnit = { kind: 'temperature', unit: 'degC' }
const FAHRENHEIT: KnownUnit = { kind: 'temperature', unit: 'degF' }

const BAROMETERS: [unit: string, lowest: number, highest: number][] = [
  ['hPa', 800, 1100],
  ['kPa', 80, 110],
  ['Pa', 80_000, 110_000],
  ['inHgConventional', 24, 32],
  ['mmHgConventional', 600, 790],
]

/** The only unit in which a number can be the pressure of the air. Source: common practice, no source. */
export function unitOfBarometer(value: number): KnownUnit | undefined {
  const found = BAROMETERS.find(([, lowest, highest]) => value >= lowest && value <= highest)
  return found && { kind: 'pressure', unit: found[0] }
}

/** A room is kept at 5 to 35 °C, which is 41 to 95 °F: outside both, nothing can be told. Source: common practice, no source. */
export function unitOfRoom(indoor: number): KnownUnit | undefined {
  if (indoor >= 5 && indoor <= 35) return CELSIUS
  return indoor >= 45 && indoor <= 100 ? FAHRENHEIT : undefined
}

/** Pressures across a building of which the highest is 15 to 150 can only be Pa. Source: common practice, no source. */
export function unitOfBuildingPressures(values: readonly number[]): KnownUnit | undefined {
  const highest = Math.max(...values.map(Math.abs))
  return highest >= 15 && highest <= 150 ? PA : undefined
}

/** What to note of pressures that were read in Pa for their size. */
export const likelyPascal = (values: readonly number[]): Remark =>
  runText('log-unit-likely/pressures', { highest: Math.max(...values.map(Math.abs)) })

/** A share above 1 is in per cent; one of at most 1 may be either, and is taken as it stands. */
export const unitOfShare = (value: number): KnownUnit => ({
  kind: 'fraction',
  unit: value <= 1 ? 'fraction' : 'percent',
})
