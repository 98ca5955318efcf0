import { counted } from '@draughtbook/shared-calc'
import type { CellBlock } from '../host/host.js'
import type { ListRow } from '../pane/one-test/lists.js'

/** Rows for the take-off, and what of the cells was left out. */
export interface SpacesFromCells {
  readonly rows: readonly ListRow[]
  readonly leftOut: readonly string[]
}

const isNumber = (text: string): boolean =>
  /^[-+]?\d[\d\s.,'’]*(?:[a-zA-Z²"][a-zA-Z²"']*)?$/.test(text.trim())

/** The unit a heading names in brackets or after a comma, as in `Length (cm)`. */
const unitOf = (heading: string): string =>
  /[([,]\s*(mm|cm|dm|m|ft|in|m²|m2)(?:\s*[)\]])?\s*$/i.exec(heading)?.[1] ?? ''

/**
 * Rooms from a selected block: a name, then length, width and clear height; or floor area and clear height. Units come
 * from the headings; a row that holds anything else is left out, and said so.
 */
export function spacesFromCells({ texts: shown, values, address }: CellBlock): SpacesFromCells {
  // What a sheet shows may be rounded: a number counts with all its digits.
  const texts = shown.map((row, i) =>
    row.map((text, k) => (typeof values[i]?.[k] === 'number' ? String(values[i]?.[k]) : text)),
  )
  const heading = texts.find((row) => !row.some(isNumber)) ?? []
  const leftOut: string[] = []
  const rows = texts.flatMap((row, i): ListRow[] => {
    if (row === heading || row.every((text) => text.trim() === '')) return []
    const numbers = row.flatMap((text, column) => (isNumber(text) ? [{ text: text.trim(), column }] : []))
    const name = row.find((text) => text.trim() !== '' && !isNumber(text))?.trim() ?? ''
    const measured = numbers.map(({ text, column }) => withUnit(text, unitOf(heading[column] ?? '')))
    const solid = solidOf(measured)
    if (solid && name !== '') return [{ name, ...solid, countsIn: 'both', use: 'add', countsAsFloor: 'yes' }]
    leftOut.push(
      `row ${i + 1} of ${address}: ${name === '' ? 'no name' : `${counted(numbers.length, 'number')} instead of two (floor area, height) or three (length, width, height)`}`,
    )
    return []
  })
  return { rows, leftOut }
}

const withUnit = (text: string, unit: string): string =>
  unit === '' || /[a-zA-Z²]$/.test(text) ? text : `${text} ${unit}`

function solidOf(measured: readonly string[]): ListRow | undefined {
  const [first = '', second = '', third = ''] = measured
  if (measured.length === 2)
    return { 'solid.shape': 'floor area', 'solid.floorArea_m2': first, 'solid.height_m': second }
  if (measured.length === 3)
    return {
      'solid.shape': 'box',
      'solid.length_m': first,
      'solid.width_m': second,
      'solid.height_m': third,
    }
  return undefined
}
