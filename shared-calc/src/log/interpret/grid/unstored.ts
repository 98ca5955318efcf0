import { fileText } from '../../../catalogue/findings/log/file.js'
import { remarkFinding } from '../../../catalogue/findings/remark.js'
import { bareUnit } from '../../cells/stated-unit.js'
import { classify, type FieldName } from '../fields/classify.js'
import { readLabel, says } from '../words/label.js'
import type { Content } from './cell-content.js'
import { formPlaces, type View } from './view.js'

const MOST_COLUMNS = 60

/** A formula whose result the file does not hold. */
export const isUnstored = (content: Content | undefined): boolean =>
  content?.kind === 'error' && content.unstored

/** The first formula without a result in some rows of a sheet. */
export function unstoredIn(view: View, from: number, to: number): string | undefined {
  for (let row = from; row < to; row++)
    for (let column = 0; column < Math.min(view.columns, MOST_COLUMNS); column++)
      if (isUnstored(view.at(row, column))) return view.address(row, column)
  return undefined
}

/** Fewer formulas below one another are no column of readings. */
const FEWEST = 3

/** The first cell of a column of formulas without results: readings that cannot be seen. */
export function unstoredColumn(view: View): string | undefined {
  for (let column = 0; column < Math.min(view.columns, MOST_COLUMNS); column++) {
    let count = 0
    for (let row = 0; row < view.rows; row++) {
      count = isUnstored(view.at(row, column)) ? count + 1 : 0
      if (count >= FEWEST) return view.address(row - FEWEST + 1, column)
    }
  }
  return undefined
}

/** A formula without a result beside a label: a value of the test that cannot be seen. */
export interface UnstoredField {
  readonly name: FieldName | 'zero'
  readonly label: string
  readonly cell: string
}

/** What the readings give anyway. */
const RESULTS: readonly string[] = ['n50', 'q50', 'qE50', 'exponent', 'rSquared', 'coefficient']

/** Cells from a label to its formula at most. */
const REACH = 3

/** The values of a form that are formulas without results. */
export function unstoredFields(view: View): UnstoredField[] {
  const found: UnstoredField[] = []
  for (const [row, column] of formPlaces(view)) {
    if (!isUnstored(view.at(row, column))) continue
    const at = [1, 2, REACH].find((step) => view.text(row, column - step) !== undefined)
    const text = at === undefined ? undefined : view.text(row, column - at)
    if (text === undefined) continue
    const label = readLabel(text)
    const unit = label.unit ?? bareUnit(view.text(row, column + 1) ?? '')
    const name = says(label, 'zero') ? 'zero' : classify(label, 'number', unit, undefined)
    if (name && !RESULTS.includes(name)) found.push({ name, label: text, cell: view.address(row, column) })
  }
  return found
}

/** Names what could not be read of the form. */
export function tellUnstored(fields: readonly UnstoredField[]) {
  if (fields.length === 0) return []
  const cells = fields.map(({ cell }) => cell)
  return [remarkFinding(fileText('log-unstored', { cells }), cells)]
}
