import type { Worksheet } from 'exceljs'
import { fonts } from './styles.js'

/** A4, in points. */
const PAPER = { short: 595.3, long: 841.9 }
const INCH = 72
/** Points of a character of a column's width; see ECMA-376 part 1, 18.3.1.13. */
export const POINTS_PER_CHARACTER = 5.25
/** Height of a line of the body font; programs would give rows without one of their own between 12.8 and 15 points. */
const LINE_HEIGHT = 12.75
const LARGEST_OF_LINE = 11
/** Rows that stay with the heading above them. */
const ROWS_WITH_HEADING = 4
/** A sheet may have 1,026 breaks. */
const MOST_BREAKS = 1000
/** A block up to this share of a page is not divided. */
const UNDIVIDED = 0.3

interface Paper {
  readonly landscape: boolean
  readonly lastRow: number
  readonly lastColumn: number
  /** Rows repeated on every page, as `1:3`. */
  readonly repeat?: string | undefined
}

/**
 * Breaks pages where they are full, and before headings that would stand at the foot of a page, apart from what they head. Programs
 * differ in how much they take a page to hold; without a break at every page, a heading kept together in one stands alone in another.
 */
export function keepHeadings(sheet: Worksheet, paper: Paper): void {
  const { lastRow } = paper
  const known = fixHeights(sheet, lastRow)
  const breaks = rowBreaks(sheet)
  const set = new Set(breaks.map(({ id }) => id))
  const page = new Page(sheet, paper)
  const breakBefore = (row: number): void => {
    if (set.has(row - 1) || set.size >= MOST_BREAKS) return
    set.add(row - 1)
    sheet.getRow(row - 1).addPageBreak()
  }
  const breakWhereFull = known ? breakBefore : () => undefined
  const starts = headings(sheet, lastRow)
  starts.forEach((start, i) => {
    page.goTo(start, set, breakWhereFull)
    if (set.has(start - 1) || !page.divides(start, (starts[i + 1] ?? lastRow + 1) - 1)) return
    breakBefore(start)
    page.startAnew()
  })
  page.goTo(lastRow + 1, set, breakWhereFull)
  breaks.sort((a, b) => a.id - b.id)
}

/**
 * Gives rows of one line the same height in every program, so that pages end where they are thought to. Tells whether every row has
 * a height now: how high another is only the program that shows it knows.
 */
function fixHeights(sheet: Worksheet, lastRow: number): boolean {
  let all = true
  for (let number = 1; number <= lastRow; number += 1) {
    const row = sheet.getRow(number)
    if (row.height !== undefined) continue
    let ofOneLine = true
    row.eachCell(({ alignment, font }) => {
      if (alignment?.wrapText || (font?.size ?? 0) > LARGEST_OF_LINE) ofOneLine = false
    })
    if (ofOneLine) row.height = LINE_HEIGHT
    else all = false
  }
  return all
}

/** exceljs keeps them without a type. */
const rowBreaks = (sheet: Worksheet): { id: number }[] =>
  (sheet as unknown as { rowBreaks: { id: number }[] }).rowBreaks

/** Rows with a heading; the first row of a sheet has nothing above it. */
function headings(sheet: Worksheet, lastRow: number): number[] {
  const found: number[] = []
  sheet.eachRow((row, number) => {
    if (number === 1 || number > lastRow) return
    const { font } = row.getCell(1)
    if (font?.size === fonts.heading.size && font?.bold && font.color?.argb === fonts.heading.color?.argb)
      found.push(number)
  })
  return found
}

/** Where rows come to stand on pages. */
class Page {
  private readonly height: number
  private readonly repeated: number
  private row = 1
  private used = 0

  constructor(
    private readonly sheet: Worksheet,
    { landscape, lastColumn, repeat }: Paper,
  ) {
    const { left = 0, right = 0, top = 0, bottom = 0 } = sheet.pageSetup.margins ?? {}
    const [across, down] = landscape ? [PAPER.long, PAPER.short] : [PAPER.short, PAPER.long]
    let width = 0
    for (let column = 1; column <= lastColumn; column += 1)
      width += (sheet.getColumn(column).width ?? 9.14) * POINTS_PER_CHARACTER
    this.height = (down - (top + bottom) * INCH) / Math.min(1, (across - (left + right) * INCH) / width)
    const [from = 1, to = 0] = repeat?.split(':').map(Number) ?? []
    this.repeated = this.heightOf(from, to)
  }

  /** Moves on to a row, over the pages that end before it. @param full - called with the first row of each new page */
  goTo(row: number, breaks: ReadonlySet<number>, full: (row: number) => void): void {
    for (; this.row < row; this.row += 1) {
      const height = this.heightOf(this.row, this.row)
      if (this.used + height > this.height) {
        full(this.row)
        this.used = this.repeated
      }
      this.used += height
      if (breaks.has(this.row)) this.used = this.repeated
    }
  }

  startAnew(): void {
    this.used = this.repeated
  }

  /** Whether a page would end within a block, where it should not. */
  divides(start: number, end: number): boolean {
    const left = this.height - this.used
    const whole = this.heightOf(start, end)
    if (whole <= left) return false
    const kept =
      whole <= UNDIVIDED * this.height
        ? whole
        : this.heightOf(start, Math.min(end, start + ROWS_WITH_HEADING))
    return kept > left
  }

  private heightOf(from: number, to: number): number {
    let height = 0
    for (let row = from; row <= to; row += 1) height += this.sheet.getRow(row).height ?? LINE_HEIGHT
    return height
  }
}
