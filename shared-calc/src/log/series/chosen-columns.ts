import { shown } from '../cells/units.js'
import { addressOf, columnIndex } from '../grid/address.js'
import type { Sheet } from '../grid/grid.js'
import { readHeading } from '../layout/match.js'
import type { SeriesLayout } from '../layout/schema.js'
import { textOf } from '../layout/scope.js'
import { refuse } from '../problem.js'
import { isNumberLike } from '../propose/survey.js'

/** Columns by their letters, for a log whose headings do not say what they hold. */
export interface ChosenColumns {
  time?: string
  pressure?: string
  flow?: string
  devicePressure?: string
}

/** Above the first number so many rows are looked through for a heading that names a unit. */
const HEADINGS = 3

/**
 * A series from columns the user named: numbers from the first row that has a pressure, units from the headings above.
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
  const list = (at: number) => {
    const unit = unitAbove(sheet, first, at)
    return {
      at: { range: `${addressOf(first, at)}:${addressOf(sheet.rows - 1, at)}` },
      ...(unit === undefined ? {} : { unit }),
    }
  }
  return {
    time: list(column(time, 'time')),
    pressure: list(pressureAt),
    ...(flow === undefined ? {} : { flow: list(column(flow, 'flow')) }),
    ...(devicePressure === undefined
      ? {}
      : { devicePressure: list(column(devicePressure, 'device pressure')) }),
  }
}

/** The unit the nearest heading names, as this reader prints it; undefined where none does. */
function unitAbove(sheet: Sheet, first: number, column: number): string | undefined {
  for (let row = first - 1; row >= Math.max(0, first - HEADINGS); row--) {
    const text = textOf(sheet.at(row, column))
    const unit = text === undefined ? undefined : (readHeading(text).unit ?? readHeading(`x (${text})`).unit)
    if (unit) return shown(unit.unit)
  }
  return undefined
}
