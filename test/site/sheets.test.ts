import { readdir } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { makePlan, measureTakeOff, parseRecord, reportLeaks, type TakeOff } from '@draughtbook/shared-calc'
import {
  readSummaryWorkbook,
  writePlanWorkbook,
  writeSummaryWorkbook,
  writeTakeOffWorkbook,
} from '@draughtbook/shared-calc/workbook'
import ExcelJS from 'exceljs'
import { beforeAll, describe, expect, it } from 'vitest'
import { type FormulaCell, readCells } from '../support/formula-cells.js'
import { recalculate, toPdf } from '../support/libreoffice.js'
import { pdfPages } from '../support/pdf-pages.js'
import { runTool } from '../support/run-tool.js'
import { exampleRecord } from './support/example-record.js'
import { house } from './support/house.js'
import { planRequest } from './support/plan-request.js'

const takeOff = house.takeOff as TakeOff

/** Cells whose stored value LibreOffice does not confirm to 1e-9; residuals near zero may differ by 1e-12. */
const unconfirmed = (cells: readonly FormulaCell[]) =>
  cells.filter(({ cached, recalculated }) =>
    typeof cached === 'number' && typeof recalculated === 'number'
      ? Math.abs(cached - recalculated) >
        Math.max(1e-9 * Math.max(Math.abs(cached), Math.abs(recalculated)), 1e-12)
      : cached !== recalculated,
  )

async function opened(bytes: Uint8Array): Promise<ExcelJS.Workbook> {
  const workbook = new ExcelJS.Workbook()
  await workbook.xlsx.load(new Uint8Array(bytes).buffer)
  return workbook
}

/** Every text and number of a sheet as LibreOffice works it out. */
function textsOf(workbook: ExcelJS.Workbook, name: string): (string | number)[] {
  const found: (string | number)[] = []
  workbook.getWorksheet(name)?.eachRow((row) => {
    row.eachCell((cell) => {
      const value = cell.result ?? cell.value
      if (typeof value === 'number' || typeof value === 'string') found.push(value)
    })
  })
  return found
}
const holds = (all: readonly (string | number)[], value: number) =>
  all.some((one) => typeof one === 'number' && Math.abs(one - value) <= 1e-9 * Math.abs(value))

describe('the summary workbook of a record@2', () => {
  let bytes: Uint8Array
  let cells: FormulaCell[]
  beforeAll(async () => {
    bytes = await writeSummaryWorkbook(house)
    cells = await readCells(bytes)
  })

  it('has the sheets Leaks, Volume, Preparation and Plan, each with live formulas that LibreOffice confirms', () => {
    expect(unconfirmed(cells)).toStrictEqual([])
    for (const sheet of ['Leaks', 'Volume', 'Plan'])
      expect(cells.filter((cell) => cell.sheet === sheet).length).toBeGreaterThan(10)
  })

  it('shows what the results say: volume, area to seal, gain of the round', async () => {
    const workbook = await opened(await recalculate(bytes))
    const { netVolume, overallInternalVolume } = measureTakeOff(takeOff)
    const report = reportLeaks(house)
    const [volume, leaks] = [textsOf(workbook, 'Volume'), textsOf(workbook, 'Leaks')]
    expect(holds(volume, netVolume?.value ?? Number.NaN)).toBe(true)
    expect(holds(volume, overallInternalVolume?.value ?? Number.NaN)).toBe(true)
    expect(holds(leaks, report.toSeal[1]?.hole.roundDiameter_mm ?? Number.NaN)).toBe(true)
    expect(holds(leaks, report.rounds[0]?.gain_m3_h ?? Number.NaN)).toBe(true)
    expect(textsOf(workbook, 'Preparation')).toContain('departs')
  })

  it('gives the record back', async () => {
    expect((await readSummaryWorkbook(bytes)).record).toStrictEqual(house)
  })

  it('a changed length on Readings changes the volume on Volume: the sheets are live', async () => {
    const workbook = await opened(bytes)
    const sheet = workbook.getWorksheet('Readings')
    let changed = 0
    sheet?.eachRow((row) => {
      if (row.getCell(2).value === 2.5 && String(row.getCell(1).value) === 'height (1)') {
        row.getCell(2).value = 3
        changed += 1
      }
    })
    expect(changed).toBe(1)
    const fresh = await opened(
      await recalculate(new Uint8Array((await workbook.xlsx.writeBuffer()) as ArrayBuffer)),
    )
    const higher = {
      ...takeOff,
      spaces: takeOff.spaces.map((space, i) =>
        i === 0 && space.solid.shape === 'box' ? { ...space, solid: { ...space.solid, height_m: 3 } } : space,
      ),
    }
    expect(holds(textsOf(fresh, 'Volume'), measureTakeOff(higher).netVolume?.value ?? Number.NaN)).toBe(true)
  })

  it('a record@1 has none of these sheets', async () => {
    const workbook = await opened(await writeSummaryWorkbook(parseRecord(exampleRecord)))
    expect(workbook.worksheets.map(({ name }) => name)).toStrictEqual([
      'Summary',
      'Report',
      'Readings',
      'Working',
      'Check',
      'Record',
    ])
  })
})

describe('the plan for the site', () => {
  let bytes: Uint8Array
  beforeAll(async () => {
    bytes = await writePlanWorkbook(planRequest)
  })

  it('starts with Plan and Checklist, and LibreOffice confirms every formula', async () => {
    expect((await opened(bytes)).worksheets.map(({ name }) => name)).toStrictEqual([
      'Plan',
      'Checklist',
      'Inputs',
      'Working',
    ])
    const cells = await readCells(bytes)
    expect(unconfirmed(cells)).toStrictEqual([])
    expect(cells.filter(({ sheet }) => sheet === 'Plan').length).toBeGreaterThan(60)
  })

  it('prints as one A4 page and its back', async () => {
    const pages = await pdfPages(await toPdf(bytes), 'take-along', 80)
    const folder = dirname(pages[0] ?? '')
    expect(await readdir(folder)).toContain('workbook.pdf')
    const [first, second, third] = await Promise.all(
      [1, 2, 3].map((page) =>
        runTool(
          'pdftotext',
          ['-f', String(page), '-l', String(page), '-layout', join(folder, 'workbook.pdf'), '-'],
          'poppler-utils',
        ),
      ),
    )
    expect(first).toContain('Test plan')
    expect(first).toContain('Weather on the day')
    expect(second).toContain('Preparation and leaks')
    expect(second).toContain('Local codes and licensed practice decide')
    expect(third).toContain('Inputs')
    const size = await runTool('pdfinfo', [join(folder, 'workbook.pdf')], 'poppler-utils')
    expect(size).toMatch(/Page size:\s+595(\.\d+)? x 84[12](\.\d+)? pts \(A4\)/)
  })

  it('prints the flows that the plan says', async () => {
    const workbook = await opened(await recalculate(bytes))
    const shown = textsOf(workbook, 'Plan')
    for (const { readings } of makePlan(planRequest).runs)
      for (const { gaugePressure_Pa, expectedFlows_m3_h } of readings) {
        expect(holds(shown, gaugePressure_Pa)).toBe(true)
        for (const { flow } of expectedFlows_m3_h) expect(holds(shown, flow)).toBe(true)
      }
  })

  it('the same request gives the same bytes', async () => {
    expect(Buffer.from(await writePlanWorkbook(planRequest)).equals(Buffer.from(bytes))).toBe(true)
  })
})

describe('the take-off workbook', () => {
  it('starts with Volume, and LibreOffice confirms every formula', async () => {
    const bytes = await writeTakeOffWorkbook({ name: 'invented house', takeOff })
    expect((await opened(bytes)).worksheets.map(({ name }) => name)).toStrictEqual([
      'Volume',
      'Inputs',
      'Working',
    ])
    const cells = await readCells(bytes)
    expect(unconfirmed(cells)).toStrictEqual([])
    expect(cells.length).toBeGreaterThan(80)
  })
})
