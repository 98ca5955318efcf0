import type { Worksheet } from 'exceljs'
import { outcomeWords } from '../../../catalogue/words.js'
import { dress, fonts, headingRow, heightFor, underline, wrap } from '../../workbook/styles.js'
import type { RegisterRow } from '../arrange.js'
import type { Register } from '../register.js'
import { NOT_LOGGED } from '../totals.js'
import { DATE_FORMAT, dateOf } from './columns.js'
import { byNumber, columnRange } from './places.js'

interface Shown {
  readonly key: string
  readonly head: string
  readonly numFmt?: string
  readonly result: (row: RegisterRow) => string | number | Date
}

const shown: readonly Shown[] = [
  { key: 'site', head: 'Site', result: ({ site }) => site ?? NOT_LOGGED },
  { key: 'plot', head: 'Plot', result: ({ building }) => building },
  { key: 'stage', head: 'Stage', result: ({ stage }) => stage ?? NOT_LOGGED },
  { key: 'date', head: 'Date', numFmt: DATE_FORMAT, result: ({ date }) => dateOf(date) },
  { key: 'margin', head: 'Margin', numFmt: '0.00', result: ({ judged }) => judged?.margin ?? '' },
  { key: 'verdict', head: 'Verdict', result: ({ outcome }) => outcomeWords[outcome] },
]

/**
 * The plots of the register still to be retested, as formulas: the list follows corrections and sorting of the
 * register. Returns the row after the section.
 */
export function writeRetests(sheet: Worksheet, start: number, { rows, toRetest }: Register): number {
  const range = (key: string) => columnRange(key, rows.length)
  const asked = `COUNTIF(${range('retest')},"yes")`
  const listed = toRetest.length
  headingRow(sheet, start, '', shown.length + 1)
  sheet.getCell(start, 1).value = {
    formula: `"Still to be retested: "&IF(${asked}=0,"none",${asked})`,
    result: `Still to be retested: ${listed === 0 ? 'none' : listed}`,
  }
  if (listed > 0)
    for (const [i, head] of ['No.', ...shown.map(({ head }) => head)].entries())
      dress(sheet.getCell(start + 1, i + 1), { font: fonts.bold }).value = head
  toRetest.forEach((number, i) => {
    const row = start + 2 + i
    const test = rows[number - 1]
    const key = dress(sheet.getCell(row, 1), { alignment: { ...wrap, horizontal: 'left' } })
    // The type of an array formula is missing from exceljs's own union of cell values.
    key.value = Object.assign(
      {
        formula: `IFERROR(SMALL(IF(${range('retest')}="yes",${range('row')}),${i + 1}),"")`,
        result: number,
      },
      { shareType: 'array', ref: key.address },
    )
    shown.forEach(({ key: column, numFmt, result }, c) => {
      dress(sheet.getCell(row, c + 2), {
        alignment: { ...wrap, horizontal: 'left' },
        ...(numFmt !== undefined && { numFmt }),
      }).value = {
        formula: `IF($A${row}="","",${byNumber(column, `$A${row}`, rows.length)})`,
        ...(test && { result: result(test) }),
      }
    })
    sheet.getRow(row).height = Math.max(heightFor(test?.site ?? '', 22), heightFor(test?.building ?? '', 18))
    underline(sheet, row, shown.length + 1)
  })
  const after = start + (listed > 0 ? listed + 2 : 1)
  dress(sheet.getCell(after, 1), { font: fonts.muted }).value = {
    formula: `IF(${asked}>${listed},"and "&(${asked}-${listed})&" more: filter the column Still to be retested of sheet Register","")`,
    result: '',
  }
  return after + 1
}
