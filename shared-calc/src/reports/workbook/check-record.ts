import type { Worksheet } from 'exceljs'
import type { Evaluation, TestRecord } from '../../contract/record/index.js'
import { heads, nameRow, state, textAlignment } from './check-rows.js'
import { RECORD, sheetText } from './record-sheet.js'
import { dress } from './styles.js'

/** The longest piece of text that is looked for. */
const PIECE = 200
/** JSON has few places to break a line at. */
const BROKEN_LINE = 20
/** Cells that one formula can look through within the 8,192 characters it may have. */
const MOST_CELLS = 30

interface Piece {
  readonly label: string
  /** Whose text on sheet Record it is looked for in. */
  readonly of: 'record' | 'evaluation'
  readonly text: string
}

/**
 * What sheet Record holds as text: name, date, volume, limit, verdict, results and the number of findings are looked for in it. A
 * record too long for a formula is left out. Returns the last row.
 */
export function writeRecordRows(
  sheet: Worksheet,
  held: Worksheet,
  { record, evaluation }: { readonly record: TestRecord; readonly evaluation: Evaluation },
  start: number,
): number {
  const cells = { record: cellsOf(held, 'record'), evaluation: cellsOf(held, 'evaluation') }
  const pieces = piecesOf(record, evaluation).filter(({ of }) => cells[of].length <= MOST_CELLS)
  heads(sheet, start, 'Held by sheet Record as text')
  sheet.getCell(start, 2).value = 'text'
  sheet.getCell(start, 3).value = 'times found'
  const texts = { record: sheetText(record), evaluation: sheetText(evaluation) }
  pieces.forEach(({ label, of, text }, i) => {
    const row = start + 1 + i
    const found = texts[of].split(text).length - 1
    dress(sheet.getCell(row, 2), { alignment: textAlignment(sheet, row, text, BROKEN_LINE) }).value = text
    nameRow(sheet, row, label)
    dress(sheet.getCell(row, 3), { alignment: { horizontal: 'right', vertical: 'top' } }).value = {
      formula: timesFound(`$B$${row}`, cells[of]),
      result: found,
    }
    state(sheet, row, `C${row}=${found}`)
  })
  return start + pieces.length
}

function piecesOf(
  { building, test, target }: TestRecord,
  { verdict, results, findings }: Evaluation,
): Piece[] {
  const piece = (label: string, of: Piece['of'], key: string, value: unknown): Piece[] =>
    value === undefined ? [] : [{ label, of, text: `"${key}":${sheetText(value)}`.slice(0, PIECE) }]
  return [
    ...piece('building', 'record', 'name', building.name),
    ...piece('date', 'record', 'date', test.date),
    ...piece('internal volume', 'record', 'volume_m3', building.volume_m3),
    ...(target ? [{ label: 'target', of: 'record' as const, text: sheetText(target).slice(0, PIECE) }] : []),
    ...piece('verdict', 'evaluation', 'outcome', verdict.outcome),
    ...piece('value judged', 'evaluation', 'value', verdict.value),
    ...piece('margin', 'evaluation', 'margin', verdict.margin),
    ...Object.entries(results).flatMap(([key, figure]) => piece(`result: ${key}`, 'evaluation', key, figure)),
    ...(findings.length > 0
      ? [{ label: 'findings, counted', of: 'evaluation' as const, text: '"rule":' }]
      : []),
  ]
}

const cellsOf = (held: Worksheet, key: string): string[] => {
  const rows: string[] = []
  held.eachRow((row, number) => {
    if (row.getCell(1).value === key) rows.push(`${RECORD}!$B$${number}`)
  })
  return rows
}

/** How often a text is in cells that hold one long text in pieces, across their seams too. */
function timesFound(text: string, cells: readonly string[]): string {
  const within = (place: string) => `LEN(${place})-LEN(SUBSTITUTE(${place},${text},""))`
  const seams = cells.slice(1).map((cell, i) => {
    const seam = `RIGHT(${cells[i]},LEN(${text})-1)&LEFT(${cell},LEN(${text})-1)`
    return within(`(${seam})`)
  })
  return `(${[...cells.map(within), ...seams].join('+')})/LEN(${text})`
}
