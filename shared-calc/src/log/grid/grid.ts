import type { Finding } from '../../contract/record/index.js'
import { refuse } from '../problem.js'
import type { Block } from './address.js'

/** How a cell stands out: written or shaded in grey, or in a colour. */
export type Faint = 'written' | 'shaded' | 'coloured' | 'filled'

/** One cell as the log holds it, before anyone interprets it. Cells without content are absent. */
export interface Cell {
  /** `unstored`: a formula whose result the file does not hold. */
  readonly kind: 'number' | 'text' | 'boolean' | 'error' | 'unstored'
  /** The number, text or boolean; the error as shown (#DIV/0!); '' for `unstored`. */
  readonly value: number | string | boolean
  /** Number format code; absent: General. */
  readonly format?: string
  readonly formula?: string
  /** The cell whose value this one shows: its formula only refers to that cell, and its result is not stored. */
  readonly refersTo?: string
  /** Struck through, wholly or in part. */
  readonly struck?: 'whole' | 'part'
  /** What is not struck through, where `struck` is 'part'. */
  readonly unstruck?: string
  /** Written or shaded in grey or in a colour: firms set aside what does not count like that. */
  readonly faint?: Faint
  /** Colour of its ground as `#rrggbb`, where it has one other than white. */
  readonly fill?: string
}

/** One sheet, counted from 0. The same interface is over a workbook's part, a text file, or ranges from Excel. */
export interface Sheet {
  readonly name: string
  readonly hidden: boolean
  /** One past the last row and column that hold something. */
  readonly rows: number
  readonly columns: number
  at(row: number, column: number): Cell | undefined
  /** All cells in any order, where that is quicker than asking for each place. */
  cells?(): Iterable<[row: number, column: number, cell: Cell]>
  isRowHidden(row: number): boolean
  isColumnHidden(column: number): boolean
  /** The merged block this cell belongs to. */
  mergeAt(row: number, column: number): Block | undefined
  /** The remark attached to a cell, where the reader of this kind of file sees remarks. */
  commentAt?(row: number, column: number): string | undefined
}

/** A name a workbook gives to cells. */
export interface DefinedName {
  name: string
  sheet: string
  block: Block
}

/** A log as cells: what layouts are applied to. Sheets are read when first asked for. */
export interface Grid {
  readonly kind: 'workbook' | 'text' | 'ranges'
  readonly fileName: string
  readonly sheetNames: readonly string[]
  /** Throws LogError when the sheet is damaged. Undefined for a name the log does not have (case counts not). */
  sheet(name: string): Sheet | undefined
  readonly names: readonly DefinedName[]
  /** Serial dates count from 1904 instead of 1900. */
  readonly date1904: boolean
  /** Decimal sign of numbers written as text, where the whole file proves one. */
  readonly decimal?: '.' | ','
  /** What was noticed while opening: macros left alone, an encoding taken, a decimal sign found. */
  readonly findings: readonly Finding[]
}

/** Places asked for one by one at most; a sheet that can list its cells is not bound by it. */
const MOST_PLACES = 5_000_000

/** All cells of a sheet, in any order. Throws LogError where a sparse sheet is too wide to search. */
export function* eachCell(sheet: Sheet): Iterable<[row: number, column: number, cell: Cell]> {
  if (sheet.cells) {
    yield* sheet.cells()
    return
  }
  if (sheet.rows * sheet.columns > MOST_PLACES)
    refuse('sheet-too-wide', `sheet ${sheet.name} is too wide to search`)
  for (let row = 0; row < sheet.rows; row++)
    for (let column = 0; column < sheet.columns; column++) {
      const cell = sheet.at(row, column)
      if (cell) yield [row, column, cell]
    }
}

/** Red, green and blue of RRGGBB after any other characters, and how far they lie apart. */
function partsOf(colour: string): { least: number; most: number } | undefined {
  const figures = /([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(colour)
  if (!figures) return undefined
  const parts = figures.slice(1).map((part) => Number.parseInt(part, 16))
  return { least: Math.min(...parts), most: Math.max(...parts) }
}

/** Parts of a colour further apart than this are seen as a colour, no longer as grey. */
const OF_GREY = 24

/** Whether a colour, given as RRGGBB after any other characters, is a grey clearly lighter than ordinary writing and darker than paper. */
export function isGrey(colour: string): boolean {
  const parts = partsOf(colour)
  return (
    parts !== undefined && parts.most - parts.least <= OF_GREY && parts.least >= 0x70 && parts.most <= 0xf0
  )
}

/** Whether a colour, given likewise, is seen as a colour: neither grey nor the dark blue that some write in. */
export function isColour(colour: string): boolean {
  const parts = partsOf(colour)
  return parts !== undefined && parts.most - parts.least > OF_GREY && parts.most >= 0x90
}

/** How a cell stands out by its writing and its ground; the writing goes before the ground, and grey before a colour. */
export function lookOf(writing: Shade, ground: Shade): Faint | undefined {
  if (writing === 'grey') return 'written'
  if (ground === 'grey') return 'shaded'
  if (writing === 'colour') return 'coloured'
  return ground === 'colour' ? 'filled' : undefined
}

export type Shade = 'grey' | 'colour' | undefined

/** What a colour, given as RRGGBB after any other characters, is seen as. */
export const shadeOf = (colour: string): Shade =>
  isGrey(colour) ? 'grey' : isColour(colour) ? 'colour' : undefined
