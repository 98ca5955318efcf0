import { isDateFormat } from '../cells/dates.js'
import { readNumberText } from '../cells/number-text.js'
import { addressOf, columnIndex } from '../grid/address.js'
import type { Cell, Sheet } from '../grid/grid.js'
import type { SeriesLayout } from '../layout/schema.js'
import { refuse } from '../problem.js'

/** Columns by their letters, for a log whose headings do not say what they hold. */
export interface ChosenColumns {
  time?: string
  pressure?: string
  flow?: string
  devicePressure?: string
}

/**
 * A series from columns the user named: numbers from the first row that has a pressure.
 * @throws LogError `layout-invalid` where a column is missing or is none
 */
export function chosenColumns(
  sheet: Sheet,
  { time, pressure, flow, devicePressure }: ChosenColumns,
): Pick<SeriesLayout, 'time' | 'pressure' | 'flow' | 'devicePressure'> {
  const column = (letters: string | undefined, what: string): number =>
    columnIndex((letters ?? '').trim().toUpperCase()) ??
    refuse('layout-invalid', `name the column of the ${what} by its letter, as in B`)
  if ((flow === undefined) === (devicePressure === undefined))
    refuse('layout-invalid', 'name either the column of the flow or that of the device pressure')
  const pressureAt = column(pressure, 'pressure')
  let first = 0
  while (first < sheet.rows && !isNumberLike(sheet.at(first, pressureAt))) first++
  if (first === sheet.rows)
    refuse('series-unusable', `column ${pressure} of sheet ${sheet.name} holds no numbers`)
  const list = (at: number) => ({
    at: { range: `${addressOf(first, at)}:${addressOf(sheet.rows - 1, at)}` },
  })
  return {
    time: list(column(time, 'time')),
    pressure: list(pressureAt),
    ...(flow === undefined ? {} : { flow: list(column(flow, 'flow')) }),
    ...(devicePressure === undefined
      ? {}
      : { devicePressure: list(column(devicePressure, 'device pressure')) }),
  }
}

/** A number, or text that begins with one. */
function isNumberLike(cell: Cell | undefined): boolean {
  if (cell?.kind === 'number') return !isDateFormat(cell.format)
  return cell?.kind === 'text' && readNumberText(String(cell.value)) !== undefined
}
