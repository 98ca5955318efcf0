import type { Grid } from '@draughtbook/shared-calc/log'
import type { CellEdit, StepId, TestAbout } from '../../kept/kept-test.js'
import type { OpenTest } from '../../kept/open-test.js'
import {
  type Area,
  areaAddress,
  cellAddress,
  cellCount,
  intersection,
  joinReference,
  parseArea,
  splitReference,
} from '../address.js'
import { CellSheet, type OpenedBook } from '../cell-sheet.js'
import { saveFile } from '../download.js'
import {
  type CellBlock,
  type CellChange,
  type CellMark,
  type CellUse,
  type CellValue,
  type Host,
  HostError,
  MOST_CELLS,
  type PhotoKeeper,
} from '../host.js'
import { cellText } from './cell-text.js'

const NO_BOOK = 'No workbook is open. Open one, or type the values into the forms.'

/** The plain page: a workbook opened from disk into an on-page grid. It has no other contact with any file. */
export class PageHost implements Host {
  readonly kind = 'page'
  readonly unavailable = {
    insertWorkbook: 'This page cannot write into the file you opened. Download the summary instead.',
  }
  readonly photos: PhotoKeeper = {
    take: (start, jpeg) => this.test.takePhoto(start, jpeg),
    read: (name) => this.test.photo(name),
    keepOnly: (names) => this.test.dropPhotos(names),
  }
  book: { name: string; sheets: CellSheet[]; opened: OpenedBook } | undefined
  marks: readonly CellMark[] = []
  uses: readonly CellUse[] = []
  /** Selection as the grid shows it; counted from 1, as all areas of the host. */
  selected: { sheet: string; area: Area } | undefined
  #expected: Promise<void> | undefined
  readonly #watchers = new Set<(change: CellChange) => void>()
  readonly #viewers = new Set<() => void>()

  /** @param test the test on show, kept in this browser */
  constructor(readonly test: OpenTest) {}

  /** Puts a workbook read by the worker on the page. */
  show(opened: OpenedBook, sheets: CellSheet[] = opened.sheets.map((sheet) => new CellSheet(sheet))): void {
    this.book = { name: opened.fileName, sheets, opened }
    const first = sheets.find(({ hidden }) => !hidden) ?? sheets[0]
    this.selected = first && { sheet: first.name, area: { top: 1, left: 1, bottom: 1, right: 1 } }
    // Those of a log that was expected may have come before it.
    if (!this.#expected) {
      this.marks = []
      this.uses = []
    }
    this.#expected = undefined
    this.#redraw()
  }

  /** The log is still being read: it counts as open, and whoever asks for its cells waits until `read` has put it on the page. */
  expect(read: Promise<unknown>): void {
    this.close()
    this.#expected = read.then(() => undefined)
    this.#redraw()
  }

  /** Takes the log off the page; it stays kept with its test. */
  close(): void {
    this.#expected = undefined
    this.book = undefined
    this.selected = undefined
    this.marks = []
    this.uses = []
    this.#redraw()
  }

  /** Calls back when the grid has to be redrawn. */
  onView(listener: () => void): () => void {
    this.#viewers.add(listener)
    return () => this.#viewers.delete(listener)
  }

  select(sheet: string, area: Area): void {
    this.selected = { sheet, area }
    this.#redraw()
  }

  /** A cell typed into the grid; places count from 1. The reader that judges numbers is fetched when first needed. */
  async type(sheetName: string, row: number, column: number, text: string): Promise<void> {
    const { typedCell } = await import('./typed-cell.js')
    const sheet = this.#sheet(sheetName)
    sheet.set(row - 1, column - 1, typedCell(text, sheet.at(row - 1, column - 1)))
    const address = cellAddress(row, column)
    const kept = this.test.edit({ sheet: sheet.name, row, column, text })
    this.#redraw()
    for (const watcher of this.#watchers) watcher({ sheet: sheet.name, address })
    await kept
  }

  textAt(sheet: CellSheet, row: number, column: number): string {
    return cellText(sheet.at(row, column), this.book?.opened.date1904)
  }

  get hasWorkbook(): boolean {
    return this.book !== undefined || this.#expected !== undefined
  }

  workbookName = async () => {
    await this.#expected
    return this.book?.name
  }

  sheets = async () =>
    (this.book?.sheets ?? []).map((sheet) => {
      const used = usedArea(sheet)
      return used ? { name: sheet.name, used: areaAddress(used) } : { name: sheet.name }
    })

  selectedReference = async (): Promise<string> => {
    await this.#expected
    if (!this.book || !this.selected) throw new HostError('no-workbook', NO_BOOK)
    return joinReference(this.selected.sheet, areaAddress(this.selected.area))
  }

  selection = async (): Promise<CellBlock> => {
    await this.#expected
    if (!this.book || !this.selected) throw new HostError('no-workbook', NO_BOOK)
    return this.#read(this.#sheet(this.selected.sheet), this.selected.area)
  }

  read = async (reference: string): Promise<CellBlock> => {
    const { sheet, area } = this.#locate(reference)
    return this.#read(sheet, area)
  }

  grid = async (): Promise<Grid> => {
    await this.#expected
    if (!this.book) throw new HostError('no-workbook', NO_BOOK)
    const { opened, sheets } = this.book
    return {
      kind: opened.kind,
      fileName: opened.fileName,
      sheetNames: sheets.map(({ name }) => name),
      sheet: (name) => sheets.find((sheet) => sheet.name.toLowerCase() === name.toLowerCase()),
      names: opened.names,
      date1904: opened.date1904,
      ...(opened.decimal === undefined ? {} : { decimal: opened.decimal }),
      findings: opened.findings,
    }
  }

  watch = async (listener: (change: CellChange) => void): Promise<() => Promise<void>> => {
    this.#watchers.add(listener)
    return async () => {
      this.#watchers.delete(listener)
    }
  }

  mark = async (marks: readonly CellMark[]): Promise<void> => {
    this.marks = marks
    this.#redraw()
  }

  get step(): StepId | undefined {
    return this.test.now.about.step
  }

  get fileDate(): string | undefined {
    return this.book?.opened.fileDate
  }

  outline(uses: readonly CellUse[]): void {
    if (uses.length === 0 && this.uses.length === 0) return
    this.uses = uses
    this.#redraw()
  }

  jump = async (reference: string): Promise<void> => {
    const { sheet, area } = this.#locate(reference)
    this.select(sheet.name, area)
  }

  loadSettings = async (): Promise<string | undefined> =>
    this.test.untouched ? undefined : this.test.now.entries

  saveSettings = (text: string, about: TestAbout): Promise<void> => this.test.save(text, about)

  insertWorkbook = async (): Promise<never> => {
    throw new HostError('unsupported', this.unavailable.insertWorkbook)
  }

  openWorkbook = async (bytes: Uint8Array, fileName: string): Promise<void> => saveFile(bytes, fileName)

  download = async (bytes: Uint8Array, fileName: string, type?: string): Promise<void> =>
    saveFile(bytes, fileName, type)

  #sheet(name: string): CellSheet {
    if (!this.book) throw new HostError('no-workbook', NO_BOOK)
    const sheet = this.book.sheets.find((candidate) => candidate.name.toLowerCase() === name.toLowerCase())
    if (!sheet) throw new HostError('not-found', `There is no sheet "${name}" in this workbook.`)
    return sheet
  }

  #locate(reference: string): { sheet: CellSheet; area: Area } {
    if (!this.book) throw new HostError('no-workbook', NO_BOOK)
    const area = parseArea(reference)
    const active = this.selected?.sheet ?? this.book.sheets[0]?.name ?? ''
    if (area) return { sheet: this.#sheet(area.sheet ?? active), area }
    const { address } = splitReference(reference)
    const name = this.book.opened.names.find(
      (candidate) => candidate.name.toLowerCase() === address.toLowerCase(),
    )
    if (!name) throw new HostError('not-found', `There is no range named "${address}" in this workbook.`)
    const { top, left, bottom, right } = name.block
    return {
      sheet: this.#sheet(name.sheet),
      area: { top: top + 1, left: left + 1, bottom: bottom + 1, right: right + 1 },
    }
  }

  #read(sheet: CellSheet, asked: Area): CellBlock {
    const used = usedArea(sheet)
    const area = used && intersection(asked, used)
    if (!area)
      return {
        sheet: sheet.name,
        address: areaAddress({ ...asked, bottom: asked.top, right: asked.left }),
        asked: areaAddress(asked),
        values: [],
        texts: [],
        formats: [],
        limited: `${areaAddress(asked)} on sheet ${sheet.name} is empty`,
      }
    if (cellCount(area) > MOST_CELLS)
      throw new HostError(
        'too-large',
        `${areaAddress(area)} has ${cellCount(area)} cells; select at most ${MOST_CELLS}.`,
      )
    const grid = <T>(of: (row: number, column: number) => T): T[][] =>
      Array.from({ length: area.bottom - area.top + 1 }, (_, row) =>
        Array.from({ length: area.right - area.left + 1 }, (__, column) =>
          of(area.top - 1 + row, area.left - 1 + column),
        ),
      )
    const block: CellBlock = {
      sheet: sheet.name,
      address: areaAddress(area),
      asked: areaAddress(asked),
      values: grid((row, column): CellValue => sheet.at(row, column)?.value ?? ''),
      texts: grid((row, column) => this.textAt(sheet, row, column)),
      formats: grid((row, column) => sheet.at(row, column)?.format ?? 'General'),
    }
    if (cellCount(area) < cellCount(asked))
      block.limited = `read ${areaAddress(area)}, the part of ${areaAddress(asked)} that is used`
    return block
  }

  #redraw(): void {
    for (const viewer of this.#viewers) viewer()
  }
}

/** From the first to the last cell that holds anything, counted from 1. */
function usedArea(sheet: CellSheet): Area | undefined {
  let area: Area | undefined
  for (let row = 0; row < sheet.rows; row++)
    for (let column = 0; column < sheet.columns; column++)
      if (sheet.at(row, column)) {
        const place = { top: row + 1, left: column + 1, bottom: row + 1, right: column + 1 }
        area = area
          ? {
              top: area.top,
              left: Math.min(area.left, place.left),
              bottom: place.bottom,
              right: Math.max(area.right, place.right),
            }
          : place
      }
  return area
}

/** The sheets of a workbook with the cells that were changed on the page before; those of a sheet that is gone are passed over. */
export async function sheetsWith(
  edits: readonly CellEdit[],
  { sheets: opened }: OpenedBook,
): Promise<CellSheet[]> {
  const sheets = opened.map((sheet) => new CellSheet(sheet))
  if (edits.length === 0) return sheets
  const { typedCell } = await import('./typed-cell.js')
  for (const { sheet: name, row, column, text } of edits) {
    const sheet = sheets.find((one) => one.name === name)
    sheet?.set(row - 1, column - 1, typedCell(text, sheet.at(row - 1, column - 1)))
  }
  return sheets
}

export const blockReference = (block: CellBlock): string => joinReference(block.sheet, block.address)
