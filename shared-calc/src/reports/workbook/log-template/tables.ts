import type { Cell, Worksheet } from 'exceljs'
import { dress, fills, fonts } from '../styles.js'
import { HALVES, type Half, type Places, ZERO_FLOW_ROWS } from './places.js'

const RUNS = [
  { half: 'left', title: 'Depressurisation', sign: -1 },
  { half: 'right', title: 'Pressurisation', sign: 1 },
] as const satisfies readonly { half: Half; title: string; sign: 1 | -1 }[]

const LINE = { style: 'hair', color: { argb: 'FF9AA5B1' } } as const
/** Beyond these a reading is a slip of the pen. */
const HIGHEST_PRESSURE_Pa = 200
const HIGHEST_ZERO_FLOW_Pa = 50

/** For each direction a table of zero-flow pressures before and after, below it one of readings. */
export function writeTables(sheet: Worksheet, { zeroFlow, readings: at }: Places, readings: number): void {
  for (const { half, title, sign } of RUNS) {
    const first = HALVES[half]
    heading(sheet, zeroFlow, first, `${title}: zero-flow pressure`)
    columnHeads(sheet, zeroFlow + 1, first, ['', 'Before (Pa)', 'After (Pa)'])
    for (let index = 0; index < ZERO_FLOW_ROWS; index++) {
      const row = zeroFlow + 2 + index
      numbered(sheet, row, first, index + 1)
      for (const column of [first + 1, first + 2])
        check(sheet.getCell(row, column), -HIGHEST_ZERO_FLOW_Pa, HIGHEST_ZERO_FLOW_Pa, '0.00')
    }
    heading(sheet, at - 1, first, `${title}: readings`)
    columnHeads(sheet, at, first, ['No.', 'Pressure (Pa)', 'Air flow (m³/h)', 'Remark'])
    for (let index = 0; index < readings; index++) {
      const row = at + 1 + index
      numbered(sheet, row, first, index + 1)
      if (sign < 0) check(sheet.getCell(row, first + 1), -HIGHEST_PRESSURE_Pa, 0, '0.0')
      else check(sheet.getCell(row, first + 1), 0, HIGHEST_PRESSURE_Pa, '0.0')
      check(sheet.getCell(row, first + 2), 0, 1_000_000, '0.0')
      entry(sheet.getCell(row, first + 3))
    }
  }
}

function heading(sheet: Worksheet, row: number, first: number, title: string): void {
  for (let column = first; column < first + 4; column++)
    dress(sheet.getCell(row, column), { font: fonts.heading, fill: fills.heading })
  sheet.getCell(row, first).value = title
}

function columnHeads(sheet: Worksheet, row: number, first: number, heads: readonly string[]): void {
  for (const [index, head] of heads.entries())
    dress(sheet.getCell(row, first + index), {
      font: fonts.muted,
      alignment: { horizontal: index === 1 || index === 2 ? 'right' : 'left', indent: index === 3 ? 1 : 0 },
    }).value = head
}

function numbered(sheet: Worksheet, row: number, column: number, value: number): void {
  dress(sheet.getCell(row, column), { font: fonts.muted, alignment: { horizontal: 'center' } }).value = value
}

function entry(cell: Cell): Cell {
  dress(cell, { font: fonts.body, fill: fills.given })
  cell.border = { top: LINE, bottom: LINE, left: LINE, right: LINE }
  return cell
}

function check(cell: Cell, from: number, to: number, numFmt: string): void {
  entry(cell).numFmt = numFmt
  cell.dataValidation = {
    type: 'decimal',
    operator: 'between',
    formulae: [from, to],
    allowBlank: true,
    showErrorMessage: true,
    errorTitle: 'Check the number',
    error:
      to === 0
        ? 'Depressurisation: inside minus outside is negative.'
        : `A number from ${from} to ${to} is expected.`,
  }
}
