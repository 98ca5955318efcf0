import { parseRecord } from '@draughtbook/shared-calc'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import ExcelJS from 'exceljs'
import { beforeAll, describe, expect, it } from 'vitest'
import demo from '../demo/demo-record.json'

let texts: string[]
let cells: Map<string, ExcelJS.Cell>

beforeAll(async () => {
  const workbook = new ExcelJS.Workbook()
  await workbook.xlsx.load((await writeSummaryWorkbook(parseRecord(demo))) as never)
  cells = new Map()
  texts = []
  workbook.getWorksheet('Report')?.eachRow((row) =>
    row.eachCell((cell) => {
      cells.set(cell.address, cell)
      texts.push(String(cell.result ?? cell.value ?? ''))
    }),
  )
})

// What a report must list: restated from public checklists (passive house test report checklist; Swiss directive on
// airtightness measurements 2022.1) and the report clause of ISO 9972:2015 (value from memory).
const asked = {
  building: ['House 7 (invented)', '7 Demonstration Meadow, Nowhere'],
  'client and tester': ['Sample Builder (invented)', 'R. Example', 'Sample Test Office (invented)'],
  'date and purpose': ['14 October 2026', 'acceptance of the finished house'],
  'method and preparation': ['ISO 9972:2015', 'method 1'],
  'volume and areas': ['243.6', '312.5', '96.8', 'net'],
  instruments: ['DEMO-G-02', 'DEMO-F-05', '1 March 2027'],
  conditions: ['19.4', '8.6', '100480', '3.4'],
  'temporary seals': ['supply and extract ducts of the ventilation unit', 'sealed'],
} as const

describe('the test report lists what certifying bodies ask for', () => {
  for (const [what, items] of Object.entries(asked))
    it(what, () => {
      for (const item of items) expect(texts).toContain(item)
    })

  it('every reading of both directions, with its deviation from the fitted curve', () => {
    const readings = demo.runs.flatMap((run) => run.readings)
    expect(texts.filter((text) => /^\d+$/.test(text) && Number(text) <= 10).length).toBeGreaterThanOrEqual(
      readings.length,
    )
    for (const { pressure_Pa } of readings) expect(texts).toContain(String(pressure_Pa))
    const deviations = [...cells.values()].filter((cell) => String(cell.numFmt).startsWith('+0.0 %'))
    expect(deviations).toHaveLength(readings.length)
    // The demo's readings were made up with scatter below 1 %, so a deviation above it would be a wrong column.
    for (const cell of deviations) expect(Math.abs(Number(cell.result))).toBeLessThan(0.01)
  })

  it('coefficients, exponent and correlation of each direction, and a place to sign', () => {
    for (const item of ['Air flow coefficient C_env', 'Air leakage coefficient C_L', 'Air flow exponent n'])
      expect(texts.filter((text) => text === item)).toHaveLength(2)
    expect(texts).toContain('Signature')
  })

  it('no figure is typed in: each number of a reading or result refers to Readings or Working', () => {
    const numbers = [...cells.values()].filter((cell) => typeof (cell.result ?? cell.value) === 'number')
    const typed = numbers.filter((cell) => cell.type !== ExcelJS.ValueType.Formula).map((cell) => cell.value)
    // Only the count of zero-flow values and the numbers of readings are plain numbers.
    const numbered = demo.runs.flatMap((run) => run.readings.map((_, i) => i + 1))
    expect(new Set(typed)).toEqual(
      new Set([...numbered, ...demo.runs.map((run) => run.zeroFlowBefore_Pa.length)]),
    )
  })
})
