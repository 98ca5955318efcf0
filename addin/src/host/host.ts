import type { Grid } from '@draughtbook/shared-calc/log'
import type { StepId, TestAbout } from '../kept/kept-test.js'

/** A cell's value as a spreadsheet holds it; '' is an empty cell. Errors stand as their text, as in `#DIV/0!`. */
export type CellValue = string | number | boolean

/** A rectangle of cells as read: `values`, `texts` and `formats` have the same shape, rows by columns. */
export interface CellBlock {
  sheet: string
  /** Address on the sheet of the cells read, as in `B4:C12`. */
  address: string
  /** Address asked for; it reaches beyond `address` where only a part of it is used. */
  asked: string
  values: CellValue[][]
  /** What the sheet shows. */
  texts: string[][]
  /** Number format codes. */
  formats: string[][]
  /** Said where fewer cells were read than asked for, as with a whole column. */
  limited?: string
}

export interface SheetInfo {
  name: string
  /** Used range, as in `A1:F40`; undefined for an empty sheet. */
  used?: string
}

/** Cells changed on a sheet; `address` may cover more cells than really differ, and is missing where any may differ. */
export interface CellChange {
  sheet: string
  address?: string
}

/** How a cell is pointed out, by the gravest finding on it. */
export interface CellMark {
  /** As in `Log!B7` or `'House 3'!B7:B9`. */
  reference: string
  severity: 'invalidates' | 'caution' | 'note'
}

/** What cells of a log are used as, for drawing over them. */
export interface CellUse {
  reference: string
  kind: 'pressure' | 'flow' | 'zero-flow' | 'detail' | 'left-out'
  /** A word or two that fit over a cell. */
  label: string
  /** The whole of it. */
  words: string
}

/** What the inserted summary's chart needs: cells of the inserted sheets, by series. */
export interface InsertedChart {
  /** Sheet the chart is on. */
  sheet: string
  /** Cell its top left corner is in. */
  anchor: string
  title: string
  xTitle: string
  yTitle: string
  series: { name: string; sheet: string; x: string; y: string; kind: 'points' | 'line' }[]
}

export interface Inserted {
  /** Names of the sheets as they now are in the workbook. */
  sheets: string[]
  chart: boolean
  /** What did not go as asked, in words for the user. */
  notes: string[]
}

/** Photos of the test on show, by file name. */
export interface PhotoKeeper {
  /** @returns the file name it is kept under: `start` and the first number that is free, as in `leak-3.jpg` */
  take(start: string, jpeg: Uint8Array): Promise<string>
  read(name: string): Promise<Uint8Array | undefined>
  /** Removes photos that nothing points to any more. */
  keepOnly(names: readonly string[]): Promise<void>
}

/**
 * What the pane needs of a spreadsheet. References are written `Sheet!A1:B2`, sheet names with other than
 * letters, digits and underscores in single quotes, or are the name of a range.
 * Every method rejects with a {@link HostError} whose message can be shown to the user.
 */
export interface Host {
  readonly kind: 'excel' | 'page'
  /** Things this host cannot do here, by method name, with the reason to show. */
  readonly unavailable: Partial<Record<'insertWorkbook' | 'openWorkbook' | 'download', string>>
  /** Whether there are cells to pick from. */
  readonly hasWorkbook: boolean
  /** Day the file was last changed, YYYY-MM-DD, where that is known. */
  readonly fileDate?: string | undefined
  /** The step that was on show when the test was last kept, where that is known. */
  readonly step?: StepId | undefined
  /** Missing where photos have no place to be kept. */
  readonly photos?: PhotoKeeper
  /** Draws over the cells what they are used as; replaces what was drawn. Missing where nothing may be drawn. */
  outline?(uses: readonly CellUse[]): void
  /** Name of the open workbook; undefined where none is open. */
  workbookName(): Promise<string | undefined>
  sheets(): Promise<SheetInfo[]>
  /** Reference of the selected cells; nothing is read. */
  selectedReference(): Promise<string>
  /** The selected cells, clipped to the used range. */
  selection(): Promise<CellBlock>
  /** Reads a range or a named range, clipped to the used range. */
  read(reference: string): Promise<CellBlock>
  /**
   * The cells of these references (or, with none given, all used cells) as the log reader takes them, with what
   * is hidden, merged or struck through.
   */
  grid(references?: readonly string[]): Promise<Grid>
  /** Calls back after cells changed on any sheet; resolves with a function that stops it. */
  watch(listener: (change: CellChange) => void): Promise<() => Promise<void>>
  /** Points cells out; replaces all earlier marks. An empty list removes them. */
  mark(marks: readonly CellMark[]): Promise<void>
  /** Brings a cell into view and selects it. */
  jump(reference: string): Promise<void>
  /** What was kept with this workbook, or undefined. */
  loadSettings(): Promise<string | undefined>
  /** @param about what a list of tests shows of this one */
  saveSettings(text: string, about: TestAbout): Promise<void>
  /** Adds a workbook's sheets to the open one; never overwrites a sheet. */
  insertWorkbook(bytes: Uint8Array, chart: InsertedChart | undefined): Promise<Inserted>
  /** Opens the bytes as a workbook of their own. */
  openWorkbook(bytes: Uint8Array, fileName: string): Promise<void>
  /** Hands the file to the user. */
  download(bytes: Uint8Array, fileName: string, type?: string): Promise<void>
}

export type HostErrorCode =
  | 'no-workbook'
  | 'not-found'
  | 'several-areas'
  | 'too-large'
  | 'busy'
  | 'unsupported'
  | 'failed'

/** Something the spreadsheet would not do, with what to do about it. */
export class HostError extends Error {
  override readonly name = 'HostError'
  constructor(
    readonly code: HostErrorCode,
    message: string,
    options?: ErrorOptions,
  ) {
    super(message, options)
  }
}

/** Cells in one read: a gauge's series of 100,000 rows fits, a sheet filled by mistake does not. */
export const MOST_CELLS = 500_000
