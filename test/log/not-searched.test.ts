import { interpretLog } from '@draughtbook/shared-calc/log'
import { describe, expect, it } from 'vitest'
import { generate, writeSheets } from './generated/generate'
import { recipe } from './generated/recipe'
import type { Sheet } from './generated/write/sheet'

/** Findings of what was not searched, of an ordinary log to which something was added. */
async function notSearched(add: (sheet: Sheet) => void) {
  const log = generate(recipe('a log with a long sheet'))
  const [sheet] = log.sheets
  add(sheet as Sheet)
  const { tests, findings } = interpretLog({
    bytes: await writeSheets(log.sheets, log.recipe),
    fileName: log.fileName,
  })
  expect(tests.map(({ record }) => record?.runs.length)).toEqual([2])
  return findings.filter(({ rule }) => rule === 'log-not-searched')
}

describe('what is not searched of a log', () => {
  it('is nothing in an ordinary one', async () => {
    expect(await notSearched(() => undefined)).toEqual([])
  })

  it('is named by sheet and first cell where rows or columns are too many', async () => {
    const long = await notSearched((sheet) => sheet.put(2500, 1, 'a remark far below'))
    expect(long.map(({ cells }) => cells)).toEqual([['Test!A2001']])
    expect(long[0]?.message).toMatch(/sheet "Test" has 2500 rows/i)
    const wide = await notSearched((sheet) => sheet.put(1, 130, 'a remark far to the right'))
    expect(wide.map(({ cells }) => cells)).toEqual([['Test!DQ1']])
  })

  it('is named where a sheet holds more texts than any form', async () => {
    const FIRST = 60
    const found = await notSearched((sheet) => {
      for (let row = FIRST; row < FIRST + 1500; row++)
        for (const column of [1, 2, 3]) sheet.put(row, column, `remark ${row} ${column}`)
    })
    expect(found.length).toBeGreaterThan(0)
    for (const { cells, message } of found) {
      const row = Number(/^Test![A-C](\d+)$/.exec(cells?.[0] ?? '')?.[1])
      // Above the remarks stand some dozen texts: the 4001st is near remark 4000 of 4500.
      expect(row).toBeGreaterThan(FIRST + 1300)
      expect(row).toBeLessThan(FIRST + 1334)
      expect(message).toMatch(/sheet "Test"/i)
    }
  })

  it('does not grow with one cell far out: places between that and the others are not asked for', () => {
    const far = { kind: 'text', value: 'Volume' } as const
    const [lastRow, lastColumn] = [1_048_575, 16_383]
    let asked = 0
    const sheet = {
      name: 'Test',
      hidden: false,
      rows: lastRow + 1,
      columns: lastColumn + 1,
      at: (row: number, column: number) => {
        asked++
        return row === lastRow && column === lastColumn ? far : undefined
      },
      *cells(): Iterable<[number, number, typeof far]> {
        yield [lastRow, lastColumn, far]
      },
      isRowHidden: () => false,
      isColumnHidden: () => false,
      mergeAt: () => undefined,
    }
    const { findings } = interpretLog({
      kind: 'workbook',
      fileName: 'log.xlsx',
      sheetNames: ['Test'],
      sheet: () => sheet,
      names: [],
      date1904: false,
      findings: [],
    })
    expect(findings.filter(({ rule }) => rule === 'log-not-searched').map(({ cells }) => cells)).toEqual([
      ['Test!A2001'],
      ['Test!DQ1'],
    ])
    // A form, 300 rows of 60 columns, is gone through once; all that is read of a sheet would be 240,000 places.
    expect(asked).toBeLessThan(20_000)
  })
})
