import { strToU8 } from 'fflate'
import { rawBook } from './raw-book'

/** A small file made so that reading it would take long, were any step of it more than linear. */
export interface LongWork {
  name: string
  fileName: string
  make(): Uint8Array
}

const letters = (column: number): string =>
  column < 26 ? String.fromCharCode(65 + column) : letters(Math.floor(column / 26) - 1) + letters(column % 26)
const inline = (text: string) => `t="inlineStr"><is><t xml:space="preserve">${text}</t></is></c>`

/** A sheet of one kind of cell, `content` giving what stands behind the address. */
function sheetOf(rows: number, columns: number, content: (row: number, column: number) => string): string {
  const cells = (row: number) =>
    Array.from({ length: columns }, (_, column) => {
      const own = content(row, column)
      return own && `<c r="${letters(column)}${row + 1}" ${own}`
    }).join('')
  const lines = Array.from({ length: rows }, (_, row) => `<row r="${row + 1}">${cells(row)}</row>`)
  return `<sheetData>${lines.join('')}</sheetData>`
}

const book = (name: string, make: () => Parameters<typeof rawBook>[0]): LongWork => ({
  name,
  fileName: 'log.xlsx',
  make: () => rawBook(make(), 1),
})
const text = (name: string, make: () => string): LongWork => ({
  name,
  fileName: 'log.csv',
  make: () => strToU8(make()),
})

/** Rows and columns in which labels are looked for. */
const SEARCHED = [300, 60] as const
const number = (value: number) => `><v>${value}</v></c>`

export const longWork: readonly LongWork[] = [
  book('15,000 headings of blanks', () => ({
    sheet: sheetOf(250, 60, (row, column) => inline(`Volume ${row}.${column}${' '.repeat(170)}in x`)),
  })),
  book('15,000 headings of blanks and brackets', () => ({
    sheet: sheetOf(250, 60, (row, column) => inline(`(${' '.repeat(180)}${row}.${column}(`)),
  })),
  book('a text of 30,000 pieces in 25,000 cells', () => ({
    // Letters by chance: a text that packs too well is refused before it is read.
    strings: `<si>${Array.from({ length: 30_000 }, (_, index) => `<r><rPr>${index % 3 ? '' : '<strike/>'}</rPr><t>${String.fromCharCode(97 + ((index * 7919) % 26))}</t></r>`).join('')}</si>`,
    sheet: sheetOf(500, 50, () => 't="s"><v>0</v></c>'),
  })),
  book('50,000 merged blocks below 18,000 labels', () => ({
    sheet: `${sheetOf(...SEARCHED, () => inline('Volume'))}<mergeCells>${Array.from({ length: 50_000 }, (_, index) => `<mergeCell ref="A${index + 1000}:B${index + 1000}"/>`).join('')}</mergeCells>`,
  })),
  book('400,000 statements of hidden columns above 18,000 labels', () => ({
    sheet: `<cols>${'<col min="90" max="16384" hidden="1"/>'.repeat(400_000)}</cols>${sheetOf(...SEARCHED, () => inline('Volume'))}`,
  })),
  book('18,000 labels that are all the same', () => ({
    sheet: sheetOf(...SEARCHED, () => inline('Volume')),
  })),
  book('18,000 labels with stars', () => ({
    sheet: sheetOf(...SEARCHED, (row, column) => inline(`Volume *${row}*${column}*`)),
  })),
  book('4,500 columns of pressures under one another', () => ({
    sheet: sheetOf(...SEARCHED, (row, column) =>
      row % 4 === 0 ? inline(column % 2 ? 'Flow' : 'Pressure') : number(50 - row),
    ),
  })),
  book('readings without headings that never rise', () => ({
    sheet: sheetOf(400, 43, (row, column) => number(5 + ((row * 37 + column * 53) % 100))),
  })),
  book('500 sheets with a cell in their last place', () => {
    const numbers = Array.from({ length: 500 }, (_, index) => index + 1)
    const relation = (index: number) =>
      `<Relationship Id="rId${index}" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet${index}.xml"/>`
    const sheet = (index: number) =>
      `<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData><row r="1048576"><c r="XFD1048576" ${inline(`Volume ${index}`)}</row></sheetData></worksheet>`
    return {
      sheets: numbers
        .map((index) => `<sheet name="S${index}" sheetId="${index}" r:id="rId${index}"/>`)
        .join(''),
      more: {
        'xl/_rels/workbook.xml.rels': strToU8(
          `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${numbers.map(relation).join('')}</Relationships>`,
        ),
        ...Object.fromEntries(
          numbers.map((index) => [`xl/worksheets/sheet${index}.xml`, strToU8(sheet(index))]),
        ),
      },
    }
  }),
  text('a text file of blanks between quotation marks', () => `a,b\n"${'" '.repeat(300_000)}`),
  text('a text file of stray quotation marks', () => `a,b\n${'"1" 2'.repeat(120_000)},\n`),
  text('a text file of blanks behind a quotation mark', () => `a,b\n"1"${' '.repeat(600_000)}x\n`),
  text('a text file of open quotation marks, line by line', () => `a,b\n${'1,"2\n'.repeat(120_000)}`),
  text('a text file of headings of blanks', () =>
    Array.from({ length: 3000 }, (_, row) => `Volume ${row}${' '.repeat(180)}in x,1`).join('\n'),
  ),
  text('a text file of two million carriage returns', () => '\r'.repeat(2_000_000)),
  text('a text file of one field of blanks', () => `a,b\n1,${' '.repeat(2_000_000)}x\n`),
]
