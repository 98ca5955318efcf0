import { bareUnit } from '../../cells/stated-unit.js'
import { directionIn, readLabel, says } from '../words/label.js'
import { cellsOf, READ, type View } from './view.js'

/** Rows of headings over a table whose readings stand below titles of their own. */
interface Sections {
  /** The line of headings, and the first row below it and its units. */
  readonly top: number
  readonly below: number
  /** Rows of the titles: "Depressurisation", "— Pressurisation —". */
  readonly titles: readonly number[]
  /** First row that is none of the table's. */
  readonly end: number
}

/** So many blank lines end a table. */
const BLANKS = 3
/** A title of a run has no more words. */
const TITLE_WORDS = 5
const BLANK = -1

/**
 * A sheet whose headings stand once over several runs, each below a title in a line of its own, with those headings repeated below each
 * title and its zero-flow pressures. Undefined where there is no such table.
 */
export function sectionedView(view: View): View | undefined {
  const tables: Sections[] = []
  for (let row = 0; row < Math.min(view.rows, READ.rows); row++) {
    const found = sectionsAt(view, row)
    if (!found) continue
    tables.push(found)
    row = found.end - 1
  }
  return tables.length === 0 ? undefined : parted(view, tables)
}

function sectionsAt(view: View, top: number): Sections | undefined {
  const columns = headingsIn(view, top)
  if (!columns) return undefined
  let below = top + 1
  while (isOfUnits(view, below)) below++
  const titles: number[] = []
  let [row, blanks, last] = [below, 0, below]
  for (; row < view.rows && blanks <= BLANKS; row++) {
    const held = textsAndNumbers(view, row)
    if (held.texts.length + held.numbers === 0) {
      blanks++
      continue
    }
    if (headingsIn(view, row)) break
    if (isTitle(held)) titles.push(row)
    // The readings begin below the first title.
    else if (titles.length === 0) return undefined
    else if (
      blanks > 0 &&
      held.texts.length > 0 &&
      !isZero(held) &&
      !columns.some((at) => view.number(row, at) !== undefined)
    )
      break
    blanks = 0
    last = row + 1
  }
  return titles.length === 0 ? undefined : { top, below, titles, end: last }
}

interface Held {
  readonly texts: readonly string[]
  readonly numbers: number
}

function textsAndNumbers(view: View, row: number): Held {
  const texts: string[] = []
  let numbers = 0
  for (let column = 0; column < Math.min(view.columns, READ.columns); column++) {
    const content = view.at(row, column)
    if (content?.kind === 'text') texts.push(content.text)
    else if (content) numbers++
  }
  return { texts, numbers }
}

/** Columns of a line with a heading of a pressure and one of a flow; undefined where it has not both. */
function headingsIn(view: View, row: number): number[] | undefined {
  const found: { at: number; kind: 'pressure' | 'flow' }[] = []
  for (let column = 0; column < Math.min(view.columns, READ.columns); column++) {
    const text = view.text(row, column)
    if (text === undefined || text.length > 80) continue
    const label = readLabel(text)
    if (says(label, 'zero')) return undefined
    const kind = label.unit?.kind
    if (kind === 'flow' || (kind === undefined && says(label, 'flow')))
      found.push({ at: column, kind: 'flow' })
    else if (kind === 'pressure' || (kind === undefined && says(label, 'pressure')))
      found.push({ at: column, kind: 'pressure' })
  }
  const has = (kind: 'pressure' | 'flow') => found.some((one) => one.kind === kind)
  return has('pressure') && has('flow') ? found.map(({ at }) => at) : undefined
}

const isOfUnits = (view: View, row: number): boolean => {
  const { texts, numbers } = textsAndNumbers(view, row)
  return numbers === 0 && texts.length > 0 && texts.every((text) => bareUnit(text.replace(/[()[\]]/g, '')))
}

const isTitle = ({ texts, numbers }: Held): boolean => {
  const label = readLabel(texts[0] ?? '')
  return (
    numbers === 0 &&
    texts.length === 1 &&
    label.tokens.length <= TITLE_WORDS &&
    !label.unit &&
    !says(label, 'zero') &&
    directionIn(label) !== undefined
  )
}

const isZero = ({ texts }: Held): boolean => says(readLabel(texts[0] ?? ''), 'zero')

/** Zero-flow pressures that say which they are: their place says no more. */
function isNamedZero(view: View, row: number): boolean {
  const held = textsAndNumbers(view, row)
  const label = readLabel(held.texts[0] ?? '')
  return held.numbers > 0 && says(label, 'zero') && says(label, 'before') !== says(label, 'after')
}

function parted(view: View, tables: readonly Sections[]): View {
  const rows: number[] = []
  let next = 0
  for (const { top, below, titles, end } of tables) {
    for (; next < top; next++) rows.push(next)
    for (const [index, title] of titles.entries()) {
      const own = Array.from({ length: (titles[index + 1] ?? end) - title - 1 }, (_, at) => title + 1 + at)
      const zeros = own.filter((row) => isNamedZero(view, row))
      const headings = Array.from({ length: below - top }, (_, at) => top + at)
      rows.push(title, ...zeros, ...headings, ...own.filter((row) => !zeros.includes(row)), BLANK)
    }
    next = end
  }
  for (; next < view.rows; next++) rows.push(next)
  const own = (row: number): number => {
    const found = rows[row] ?? BLANK
    return found === BLANK ? view.rows : found
  }
  return {
    ...view,
    rows: rows.length,
    ...cellsOf((row, column) => view.at(own(row), column)),
    address: (row, column) => view.address(own(row), column),
    hidden: (row, column) => view.hidden(own(row), column),
    comment: (row, column) => view.comment(own(row), column),
    right: (row, column) => view.right(own(row), column),
  }
}
