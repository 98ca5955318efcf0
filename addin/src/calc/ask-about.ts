import {
  InputError,
  type PlausibleRange,
  parseRecord,
  plausibleRanges,
  RECORD_FORMAT,
  withMinus,
} from '@draughtbook/shared-calc'
import { fieldKind, findUnit, interpret, setPath } from '@draughtbook/shared-calc/log'
import { unitsOf } from '../pane/figures.js'

/** A value that no ordinary test has, with what may have been meant. Nothing is calculated from it until answered. */
export interface AskedValue {
  words: string
  /** What may have been meant, as it would be typed. */
  meant: readonly { text: string; unit?: string }[]
  /** Whether a test can have the value all the same. */
  canKeep: boolean
}

const ranges: Readonly<Record<string, PlausibleRange>> = plausibleRanges

/** What to ask about a value typed for a field. Undefined where it is ordinary, or the field has no ordinary range. */
export function askAbout(path: string, text: string, value: number): AskedValue | undefined {
  if (/RelativeHumidity$/.test(path)) return askAboutHumidity(text, value)
  const range = ranges[path]
  if (!range || (value >= range.lowest && value <= range.highest)) return undefined
  const { term, unit, lowest, highest } = range
  const units = unitsOf(path).filter((name) => {
    const known = findUnit(name)
    const read = known && interpret({ kind: 'text', value: text.trim() }, fieldKind(path), { unit: known })
    if (!read || 'refused' in read || typeof read.value !== 'number') return false
    return read.value !== value && read.value >= lowest && read.value <= highest
  })
  const canKeep = !refuses(path, value)
  return {
    words: `${shown(value)} ${unit} is ${canKeep ? 'unusual' : 'not possible'}: ${term} is ${shown(lowest)} to ${shown(highest)} ${unit} in ordinary tests.`,
    meant: units.map((one) => ({ text: text.trim(), unit: one })),
    canKeep,
  }
}

/** Below this the air of a house is unusually dry: common practice, no source. */
const DRY = 0.05

/** The record holds a share; people say per cent, with or without the sign. */
function askAboutHumidity(text: string, value: number): AskedValue | undefined {
  if (value >= DRY && value <= 1) return undefined
  const percent = [value, value * 100, value * 10_000].find((one) => one >= 100 * DRY && one <= 100)
  const meant = percent === undefined ? [] : [{ text: `${Number(percent.toPrecision(6))} %` }]
  if (value < 0 || value > 1)
    return {
      words: `${withMinus(text.trim())} is not possible: relative humidity is 0 to 1, or 0 to 100 %.`,
      meant,
      canKeep: false,
    }
  return {
    words: `${shown(value * 100)} % is unusual: relative humidity is ${100 * DRY} to 100 % in ordinary tests.`,
    meant,
    canKeep: true,
  }
}

/** Whether the record's own bounds refuse the value. */
function refuses(path: string, value: number): boolean {
  const draft = { format: RECORD_FORMAT, building: {}, test: {}, conditions: {}, runs: [] }
  setPath(draft, path, value)
  try {
    parseRecord(draft)
    return false
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    return error.problems.some((problem) => problem.path === path)
  }
}

/** Up to six significant figures, with thousands apart from 10 000 on. */
const shown = (value: number): string =>
  withMinus(
    Number(value.toPrecision(6))
      .toLocaleString('en-GB', { maximumFractionDigits: 6, useGrouping: 'min2' })
      .replaceAll(',', '\u202f'),
  )
