import { readFileSync } from 'node:fs'
import { parseRecord } from '@draughtbook/shared-calc'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import ExcelJS from 'exceljs'
import { beforeAll, describe, expect, it } from 'vitest'
import { compareCached, readCells } from '../support/formula-cells.js'
import { recalculate } from '../support/libreoffice.js'

const demo = () => parseRecord(JSON.parse(readFileSync('test/demo/demo-record.json', 'utf8')))

/** Relative 1e-9; figures that are zero but for rounding (residuals, differences) agree to 1e-12. */
const agreement = { relative: 1e-9, absolute: 1e-12 }

const records: Record<string, () => ReturnType<typeof demo>> = {
  'the demo test, flows through a device': demo,
  'one direction, flows as indicated, no target': () => {
    const { target: _, ...record } = demo()
    const readings = [61.2, 54, 47.3, 39.8, 32.4, 25.1, 17.9].map((pressure_Pa, i) => ({
      pressure_Pa,
      flow_m3_h: [1002, 925, 846, 757, 658, 553, 435][i] ?? 0,
    }))
    return parseRecord({
      ...record,
      runs: [{ direction: 'pressurisation', zeroFlowBefore_Pa: [1.2], readings }],
    })
  },
  'a target at 4 Pa, rounded, with the altitude in place of a barometer': () => {
    const record = demo()
    const { barometricPressure_Pa: _, ...conditions } = record.conditions
    const target = {
      quantity: 'qE_pr',
      referencePressure_Pa: 4,
      limit: 0.6,
      decimalPlaces: 2,
      directions: 'any',
    }
    return parseRecord({ ...record, conditions, target })
  },
  'a large passive house with two limits, each direction judged': () => {
    const record = demo()
    return parseRecord({
      ...record,
      building: { ...record.building, volume_m3: 5200, envelopeArea_m2: 190 },
      target: { preset: 'passive-house-new', directions: 'each' },
    })
  },
}

describe('the summary workbook, recalculated by LibreOffice', () => {
  it.concurrent.each(Object.entries(records))(
    'agrees with the service to 1e-9 in every formula: %s',
    async (_, record) => {
      const bytes = await writeSummaryWorkbook(record())
      expect(await compareCached(bytes, agreement)).toEqual([])
    },
    300_000,
  )
})

/** Text of a cell of the recalculated workbook. */
const textAt = (workbook: ExcelJS.Workbook, sheet: string, address: string): string => {
  const cell = workbook.getWorksheet(sheet)?.getCell(address)
  return String((cell?.type === ExcelJS.ValueType.Formula ? cell.result : cell?.value) ?? '')
}

async function load(bytes: Uint8Array): Promise<ExcelJS.Workbook> {
  const workbook = new ExcelJS.Workbook()
  await workbook.xlsx.load(bytes.slice().buffer)
  return workbook
}

/** The demo workbook with one cell altered by a spreadsheet user, recalculated. */
async function edited(
  sheet: string,
  address: string,
  value: string | number | null,
): Promise<ExcelJS.Workbook> {
  const workbook = await load(await writeSummaryWorkbook(demo()))
  const target = workbook.getWorksheet(sheet)
  if (!target) throw new Error(`no sheet ${sheet}`)
  target.getCell(address).value = value
  return load(await recalculate(new Uint8Array(await workbook.xlsx.writeBuffer())))
}

describe('sheet Check after an edit', () => {
  let untouched: ExcelJS.Workbook
  beforeAll(async () => {
    untouched = await load(await recalculate(await writeSummaryWorkbook(demo())))
  })

  it('finds nothing in an untouched workbook', () => {
    expect(textAt(untouched, 'Check', 'B2')).toBe('0')
    expect(textAt(untouched, 'Check', 'C2')).toBe('agrees with the issued record')
    expect(textAt(untouched, 'Summary', 'C2')).toBe('')
  })

  it('shows a reading that was changed, and every figure that follows from it', async () => {
    const workbook = await edited('Readings', 'B10', -55)
    expect(Number(textAt(workbook, 'Check', 'B2'))).toBeGreaterThan(10)
    expect(textAt(workbook, 'Summary', 'C2')).toContain('EDITED SINCE ISSUE')
  })

  it('shows a text that was changed', async () => {
    const before = untouched.getWorksheet('Readings')
    let address = ''
    before?.eachRow((row) => {
      if (row.getCell(1).text === 'tester') address = `B${row.number}`
    })
    const workbook = await edited('Readings', address, 'Somebody Else')
    // The logged text, and the cell of Summary that shows it.
    expect(textAt(workbook, 'Check', 'B2')).toBe('2')
    expect(textAt(workbook, 'Check', 'B4')).toBe('tester')
  })

  it('shows each cell of Summary that was typed over, by its address', async () => {
    const workbook = await load(await writeSummaryWorkbook(demo()))
    const typed: string[] = []
    workbook.getWorksheet('Summary')?.eachRow((row) =>
      row.eachCell((cell) => {
        const shown = cell.type === ExcelJS.ValueType.Formula ? cell.result : cell.value
        if ((cell.isMerged && cell.master !== cell) || shown === '' || shown === null || shown === undefined)
          return
        // The text that says how many cells differ is not among them.
        if (cell.address === 'C2') return
        typed.push(cell.address)
        cell.value = typeof shown === 'number' ? (shown || 1) * 1.00001 : `${shown}.`
      }),
    )
    const after = await load(await recalculate(new Uint8Array(await workbook.xlsx.writeBuffer())))
    const differing: string[] = []
    after.getWorksheet('Check')?.eachRow((row) => {
      const address = /^Summary ([A-Z]+\d+):/.exec(row.getCell(1).text)?.[1]
      if (address && textAt(after, 'Check', `E${row.number}`) === 'differs') differing.push(address)
    })
    expect(differing).toEqual(typed)
    expect(typed.length).toBeGreaterThan(80)
    expect(textAt(after, 'Check', 'B2')).toBe(String(typed.length))
    expect(textAt(after, 'Check', 'B4')).toMatch(/^Summary A1: /)
    expect(textAt(untouched, 'Check', 'B4')).toBe('none')
  })

  it('shows that the text on sheet Record was changed', async () => {
    let address = ''
    let text = ''
    untouched.getWorksheet('Record')?.eachRow((row) => {
      if (row.getCell(1).text !== 'evaluation' || address) return
      address = `B${row.number}`
      text = row.getCell(2).text
    })
    const changed = text.replace('"outcome":"meets"', '"outcome":"misses"')
    expect(changed).not.toBe(text)
    const workbook = await edited('Record', address, changed)
    expect(textAt(workbook, 'Check', 'B2')).toBe('1')
    expect(textAt(workbook, 'Check', 'B4')).toBe('verdict')
  })

  it('shows a number that was emptied or turned into text', async () => {
    expect(Number(textAt(await edited('Readings', 'F9', null), 'Check', 'B2'))).toBeGreaterThan(0)
    expect(Number(textAt(await edited('Readings', 'F9', '-0.9'), 'Check', 'B2'))).toBeGreaterThan(0)
  })

  it('shows a formula of Working that was overwritten', async () => {
    const cells = await readCells(await writeSummaryWorkbook(demo()))
    const exponent = cells.find(
      ({ sheet, formula }) => sheet === 'Working' && /^\(\$C\$\d+\/\$C\$\d+\)$/.test(formula),
    )
    expect(exponent).toBeDefined()
    const workbook = await edited('Working', exponent?.address ?? '', 0.6)
    expect(Number(textAt(workbook, 'Check', 'B2'))).toBeGreaterThan(3)
  })
})
