import { fileText } from '../../../catalogue/findings/log/file.js'
import { remarkFinding } from '../../../catalogue/findings/remark.js'
import type { Finding } from '../../../contract/record/index.js'
import { formPlaces, type View } from '../grid/view.js'
import { beginsExample } from '../words/example.js'
import { readLabel, says } from '../words/label.js'

/** A column of a form that holds the values of an earlier test beside those of this one. */
export interface FormerColumn {
  readonly view: View
  readonly heading: string
  readonly column: number
  readonly top: number
  readonly bottom: number
  readonly cells: readonly string[]
}

/** Blank lines inside such a column. */
const BLANKS = 2

/** "Last year" over a column of values, each beside the value of this test in the same line. */
export function formerColumns(view: View): FormerColumn[] {
  const found: FormerColumn[] = []
  for (const [row, column] of formPlaces(view)) {
    const heading = column < 2 ? undefined : view.text(row, column)
    if (heading === undefined || heading.length > 40) continue
    if (!isOfOther(heading) && !isOfEarlierYear(view, row, column, heading)) continue
    const cells: string[] = []
    let bottom = row
    for (let at = row + 1; at < view.rows; at++) {
      const content = view.at(at, column)
      if (!content) continue
      const goesOn = at - bottom <= BLANKS + 1 || isOfLine(view, at, column)
      if (!goesOn || !isBesideAnother(view, at, column)) break
      bottom = at
      cells.push(view.address(at, column))
    }
    if (cells.length > 0) found.push({ view, heading, column, top: row, bottom, cells })
  }
  return found
}

/** "Last year", "Example": the heading of values that are not of this test. */
const isOfOther = (heading: string): boolean =>
  says(readLabel(heading), 'former') || (beginsExample(heading) && readLabel(heading).tokens.length <= 2)

/** "Test of 2024" over a day of that year, with a later day in front of it in the same line: that of this test. */
function isOfEarlierYear(view: View, row: number, column: number, heading: string): boolean {
  const year = YEAR.exec(heading)?.[0]
  if (year === undefined) return false
  for (let at = row + 1; at <= row + DATE_WITHIN; at++) {
    const [own, front] = [view.at(at, column), view.at(at, column - 1)]
    if (own?.kind !== 'date' || front?.kind !== 'date') continue
    return (
      own.dates.every((date) => date.startsWith(year)) && front.dates.every((date) => date.slice(0, 4) > year)
    )
  }
  return false
}

const YEAR = /(?<!\d)20\d\d(?!\d)/

/** The day of a test stands so many lines below the heading of its values at most. */
const DATE_WITHIN = 12

/** Below the readings: a label with its value, and this number next to it. */
const isOfLine = (view: View, row: number, column: number): boolean =>
  view.number(row, column) !== undefined &&
  view.number(row, column - 1) !== undefined &&
  view.text(row, column - 2) !== undefined

/** A label in front, and between the two a value of the same kind. */
function isBesideAnother(view: View, row: number, column: number): boolean {
  const kind = view.at(row, column)?.kind
  const left = Array.from({ length: column }, (_, at) => view.at(row, at)?.kind)
  const label = left.indexOf('text')
  return label >= 0 && left.some((one, at) => at > label && one === kind)
}

/** Cells that belong to something else, with those of such columns. */
export const takenWith =
  (isTaken: (row: number, column: number) => boolean, former: readonly FormerColumn[]) =>
  (row: number, column: number): boolean =>
    isTaken(row, column) || former.some((one) => column === one.column && row > one.top && row <= one.bottom)

export const tellFormer = (columns: readonly FormerColumn[]): Finding[] =>
  columns.map(({ heading, cells }) => remarkFinding(fileText('log-former-values', { heading }), [...cells]))
