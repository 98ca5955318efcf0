import { addressOf, columnLetters, withSheet } from '../../log/grid/address.js'
import type { Difference } from '../report.js'
import { compareCellLooks, type IssuedContents } from './compare-cell-looks.js'
import { compareObjects } from './compare-objects.js'
import { seen, settingDifferences } from './seen-difference.js'
import type { SheetLook } from './sheet-look.js'
import type { CellLook } from './styles.js'

/** Programs round heights and widths to whole dots of the screen; below this share of its size a cell is cut. */
const CUT = 0.9
/** Programs take another usual font of about the size; outside these shares of its size it was changed. */
const SMALL = 0.75
const LARGE = 1.5
/** Beyond this many times the size that was stated for it, a row or column was made larger. */
const LARGER = 1.3
/** Where none was stated, a program that saves the file chooses its own; beyond this many times the usual size a cell pushes others off the page. */
const PUSHED = 4

/** Everything seen of a sheet, beside the contents of its cells, that is not as issued. */
export function compareSheetLooks(
  issued: SheetLook,
  now: SheetLook,
  contents: IssuedContents,
  again: boolean,
): Difference[] {
  const { name } = issued
  return [
    ...(issued.state === now.state
      ? []
      : [seen('sheet', `sheet ${name} is hidden`, name, issued.state, now.state)]),
    ...compareCellLooks(issued, now, contents),
    ...sizes(issued, now, contents, again),
    ...merges(issued, now),
    ...conditions(issued, now),
    ...compareObjects(issued, now),
    ...now.comments
      .filter((ref) => !issued.comments.includes(ref))
      .map((ref) => seen('drawing', 'a comment was added', withSheet(name, ref), null, 'comment')),
    ...settingDifferences('page', `print set-up of sheet ${name}: `, name, issued.page, now.page),
    ...settingDifferences('sheet', `sheet ${name}: `, name, others(issued, now), others(now, now)),
  ]
}

/** Some programs do not keep what was frozen, or a filter; then everything can be reached, and is shown. */
const others = (look: SheetLook, now: SheetLook): SheetLook['others'] => {
  const lost = [
    ...(now.others.get('frozen') === 'nothing' ? ['frozen'] : []),
    ...(now.others.get('filter') === 'none' ? ['filter'] : []),
  ]
  return new Map([...look.others].filter(([key]) => !lost.includes(key)))
}

function sizes(issued: SheetLook, now: SheetLook, contents: IssuedContents, again: boolean): Difference[] {
  const { name } = issued
  const filled = [...issued.cells.values()].filter((cell) => cell.filled)
  // Empty rows and columns among the others count too: they carry charts, and push what stands behind them off the page.
  const rows = upTo([...filled.map(({ row }) => row), ...issued.objects.map(({ to }) => to.row)])
  const columns = upTo([...filled.map(({ column }) => column), ...issued.objects.map(({ to }) => to.column)])
  const higher = new Set(
    filled
      .filter(({ row, column, look }) => isHigh(look, contents(name, row, column), issued.width(column)))
      .map(({ row }) => row),
  )
  // Widths are counted in digits of the usual font.
  const digit = now.usualSize / issued.usualSize
  return [
    ...rows.flatMap((row) =>
      size(
        `row ${row + 1}`,
        'points',
        withSheet(name, addressOf(row, 0)),
        issued.height(row),
        now.height(row),
        !again || issued.stated.rows.has(row) || !higher.has(row),
      ),
    ),
    ...columns.flatMap((column) =>
      size(
        `column ${columnLetters(column)}`,
        'characters',
        withSheet(name, addressOf(0, column)),
        issued.width(column),
        now.width(column) * (digit < SMALL || digit > LARGE ? digit : 1),
        !again || issued.stated.columns(column),
      ),
    ),
  ]
}

/** Whether a text may take more than one usual line: then the program that saves the file makes its row as high as it likes. */
const isHigh = ({ wrapped, font }: CellLook, value: number | string | undefined, width: number): boolean =>
  (font.size ?? 0) > USUAL_SIZE ||
  (wrapped && typeof value === 'string' && (value.includes('\n') || value.length > NARROW * width))

/** Letters are of unlike widths: beyond this share of the column's a text may take another line. */
const NARROW = 0.7

/** Points: with it a line is not higher than the usual one. */
const USUAL_SIZE = 12

/** Every number from 0 to the largest. */
const upTo = (numbers: readonly number[]): number[] =>
  Array.from({ length: 1 + numbers.reduce((most, one) => Math.max(most, Math.floor(one)), -1) }, (_, i) => i)

/** @param stated - whether the size was given at issue, not left to the program that saved the file */
function size(
  what: string,
  unit: string,
  cell: string,
  issued: number,
  now: number,
  stated: boolean,
): Difference[] {
  if (now === 0 && issued > 0) return [seen('appearance', `${what} is hidden`, cell, 'shown', 'hidden')]
  if (now >= CUT * issued && now <= (stated ? LARGER : PUSHED) * issued) return []
  const label = unit === 'points' ? `height of ${what}, ${unit}` : `width of ${what}, ${unit}`
  return [seen('appearance', label, cell, issued, now)]
}

function merges({ name, merges: issued }: SheetLook, { merges: now }: SheetLook): Difference[] {
  const added = [...now].filter((ref) => !issued.has(ref))
  const gone = [...issued].filter((ref) => !now.has(ref))
  return [
    ...added.map((ref) => seen('appearance', 'cells merged', withSheet(name, ref), null, ref)),
    ...gone.map((ref) => seen('appearance', 'cells no longer merged', withSheet(name, ref), ref, null)),
  ]
}

/** Rules area by area: their order within an area counts, the order of areas does not. */
function conditions({ name, conditions: issued }: SheetLook, { conditions: now }: SheetLook): Difference[] {
  const areas = new Set([...issued, ...now].map(({ area }) => area))
  return [...areas].flatMap((area) => {
    const text = (all: SheetLook['conditions']) =>
      all
        .filter((one) => one.area === area)
        .map(({ rule, look }) => `${rule}: ${lookText(look)}`)
        .join('; ')
    const [a, b] = [text(issued), text(now)]
    return a === b
      ? []
      : [seen('appearance', 'conditional format', withSheet(name, area), a || null, b || null)]
  })
}

const lookText = ({ colour, fill, bold, struck, format }: SheetLook['conditions'][number]['look']): string =>
  [
    colour && `text ${colour}`,
    fill && `background ${fill}`,
    bold && 'bold',
    struck && 'struck through',
    format !== undefined && `number format ${format}`,
  ]
    .filter(Boolean)
    .join(', ')
