import { type PlausibleRange, plausibleRanges } from '@draughtbook/shared-calc'
import { fieldKind, findUnit, interpret } from '@draughtbook/shared-calc/log'
import { unitsOf } from '../pane/figures.js'

/** A value that no ordinary test has, with what may have been meant. Nothing is calculated from it until answered. */
export interface AskedValue {
  words: string
  /** Units in which the number would be an ordinary value. */
  units: readonly string[]
}

const ranges: Readonly<Record<string, PlausibleRange>> = plausibleRanges

/** What to ask about a value typed for a field. Undefined where it is ordinary, or the field has no ordinary range. */
export function askAbout(path: string, text: string, value: number): AskedValue | undefined {
  const range = ranges[path]
  if (!range || (value >= range.lowest && value <= range.highest)) return undefined
  const { term, unit, lowest, highest } = range
  const units = unitsOf(path).filter((name) => {
    const known = findUnit(name)
    const read = known && interpret({ kind: 'text', value: text.trim() }, fieldKind(path), { unit: known })
    if (!read || 'refused' in read || typeof read.value !== 'number') return false
    return read.value !== value && read.value >= lowest && read.value <= highest
  })
  return {
    words: `${Number(value.toPrecision(6))} ${unit} is unusual: ${term} is ${lowest} to ${highest} ${unit} in ordinary tests.`,
    units,
  }
}
