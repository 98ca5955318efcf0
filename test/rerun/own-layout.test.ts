import { evaluate } from '@draughtbook/shared-calc'
import { type LayoutInput, parseLayout } from '@draughtbook/shared-calc/log'
import { readLines } from '@draughtbook/shared-calc/register'
import { rerunFile } from '@draughtbook/shared-calc/rerun'
import ExcelJS from 'exceljs'
import { describe, expect, it } from 'vitest'
import { decimalsOf, displayedNumber } from '../../shared-calc/src/rerun/displayed'
import { inventedRecord } from '../archive/invented-record'

const record = inventedRecord(77, { stage: 'acceptance', date: '2026-10-12', plot: 'Plot 77' })
const { results, runs, verdict } = evaluate(record)

const layout: LayoutInput = {
  format: 'draughtbook/layout@1',
  name: 'An invented firm’s own workbook',
  fingerprint: { cells: [{ cell: 'A1', text: 'Own test sheet (invented)' }] },
  constants: {
    'test.method': 'iso-9972:2015',
    'building.volumeBasis': 'net',
    'target.preset': 'passive-house-new',
  },
  fields: [
    { path: 'building.name', at: { cell: 'B2' } },
    { path: 'test.date', at: { cell: 'B3' } },
    { path: 'building.volume_m3', at: { cell: 'B4' }, unit: 'm³' },
    { path: 'conditions.indoorTemperature_C', at: { cell: 'B5' }, unit: '°C' },
    { path: 'conditions.outdoorTemperature_C', at: { cell: 'B6' }, unit: '°C' },
    { path: 'conditions.barometricPressure_Pa', at: { cell: 'B7' }, unit: 'Pa' },
    { path: 'conditions.indoorRelativeHumidity', at: { cell: 'B8' }, unit: '%' },
    { path: 'conditions.outdoorRelativeHumidity', at: { cell: 'B9' }, unit: '%' },
    { path: 'building.envelopeArea_m2', at: { cell: 'B10' }, unit: 'm²' },
  ],
  results: [
    { figure: 'n50', at: { cell: 'E2' } },
    { figure: 'q50', direction: 'depressurisation', at: { cell: 'E3' } },
    { figure: 'airFlowExponent', direction: 'pressurisation', at: { cell: 'E4' } },
    { figure: 'qE50', at: { cell: 'E5' } },
    { figure: 'outcome', at: { cell: 'E6' }, words: { passed: 'meets', failed: 'misses' } },
  ],
  runs: [
    {
      direction: 'depressurisation',
      sign: { readings: 'inside minus outside', zeroFlow: 'inside minus outside' },
      pressure: { at: { range: 'A13:A20' }, unit: 'Pa' },
      flow: { at: { range: 'B13:B20' }, unit: 'm³/h' },
      zeroFlowBefore: { at: { range: 'E13:E24' }, unit: 'Pa' },
      zeroFlowAfter: { at: { range: 'F13:F24' }, unit: 'Pa' },
    },
    {
      direction: 'pressurisation',
      sign: { readings: 'inside minus outside', zeroFlow: 'inside minus outside' },
      pressure: { at: { range: 'C13:C20' }, unit: 'Pa' },
      flow: { at: { range: 'D13:D20' }, unit: 'm³/h' },
      zeroFlowBefore: { at: { range: 'G13:G24' }, unit: 'Pa' },
      zeroFlowAfter: { at: { range: 'H13:H24' }, unit: 'Pa' },
    },
  ],
}

/** The firm's workbook as it would stand, with results to the places its formats show. */
async function ownWorkbook(
  change: (sheet: ExcelJS.Worksheet) => void = () => undefined,
): Promise<Uint8Array> {
  const workbook = new ExcelJS.Workbook()
  const sheet = workbook.addWorksheet('Test')
  const { building, conditions } = record
  const fields = [
    'Own test sheet (invented)',
    building.name,
    record.test.date,
    building.volume_m3,
    conditions.indoorTemperature_C,
    conditions.outdoorTemperature_C,
    conditions.barometricPressure_Pa,
    45,
    75,
    building.envelopeArea_m2,
  ]
  fields.forEach((value, i) => {
    sheet.getCell(i + 1, i === 0 ? 1 : 2).value = value ?? null
  })
  const shown: [string, number | undefined, string][] = [
    ['E2', results.n50?.value, '0.00'],
    ['E3', runs[0]?.q50.value, '0'],
    ['E4', runs[1]?.airFlowExponent.value, '0.000'],
  ]
  for (const [cell, value, numFmt] of shown) {
    const places = decimalsOf(value ?? 0, numFmt)
    // The firm's own sheet holds what it worked out, a little off in places that it does not show.
    sheet.getCell(cell).value = Number((value ?? 0).toFixed(places)) + 0.2 * 10 ** -places
    sheet.getCell(cell).numFmt = numFmt
  }
  sheet.getCell('E5').value = `${results.qE50?.value.toFixed(1)} m³/(h·m²)`
  sheet.getCell('E6').value = verdict.outcome === 'meets' ? 'Passed' : 'Failed'
  record.runs.forEach((run, r) => {
    run.readings.forEach((reading, i) => {
      sheet.getCell(13 + i, 1 + 2 * r).value = reading.pressure_Pa
      sheet.getCell(13 + i, 2 + 2 * r).value = reading.flow_m3_h ?? null
    })
    for (const [k, values] of [run.zeroFlowBefore_Pa ?? [], run.zeroFlowAfter_Pa ?? []].entries())
      values.forEach((value, i) => {
        sheet.getCell(13 + i, 5 + 2 * r + k).value = value
      })
  })
  change(sheet)
  return new Uint8Array(await workbook.xlsx.writeBuffer())
}

const set = (sheet: ExcelJS.Worksheet, cell: string, value: ExcelJS.CellValue): void => {
  sheet.getCell(cell).value = value
}

const layouts = [parseLayout(layout)]

async function rerun(bytes: Uint8Array) {
  const [test] = await rerunFile(bytes, 'own.xlsx', { layouts })
  return test
}

describe('Re-run of a firm’s own workbook', () => {
  it('agrees at the precision the result cells show', async () => {
    const test = await rerun(await ownWorkbook())
    expect(test?.differences.filter(({ rounding }) => !rounding)).toEqual([])
    expect(test).toMatchObject({ kind: 'own layout', outcome: 'agrees', compared: { figures: 5 } })
    expect(test?.why).toBe('all 5 recorded results agree at the displayed precision')
  })

  it.each([
    [
      'E2',
      (sheet: ExcelJS.Worksheet) => set(sheet, 'E2', Number(results.n50?.value.toFixed(2)) + 0.01),
      'n50',
    ],
    [
      'E3',
      (sheet: ExcelJS.Worksheet) => set(sheet, 'E3', Math.round(runs[0]?.q50.value ?? 0) - 1),
      'depressurisation: q50',
    ],
    ['E5', (sheet: ExcelJS.Worksheet) => set(sheet, 'E5', '9.9 m³/(h·m²)'), 'qE50'],
    [
      'E6',
      (sheet: ExcelJS.Worksheet) =>
        (sheet.getCell('E6').value = verdict.outcome === 'meets' ? 'failed' : 'passed'),
      'outcome',
    ],
    ['E4', (sheet: ExcelJS.Worksheet) => set(sheet, 'E4', null), 'pressurisation: airFlowExponent'],
  ])('finds a result that is not what the readings give, in cell %s', async (cell, change, label) => {
    const test = await rerun(await ownWorkbook(change))
    expect(test?.outcome).toBe('differs')
    const [found, ...more] = test?.differences.filter(({ rounding }) => !rounding) ?? []
    expect(more).toEqual([])
    expect(found).toMatchObject({ label, cell: `Test!${cell}`, kind: 'figure' })
  })

  it('says that dry air explains a difference, and accepts it within a tolerance that the layout states', async () => {
    // Independent of the product: densities of moist and dry air by the gas law, vapour pressure by Tetens' formula.
    const { indoorTemperature_C: inside, outdoorTemperature_C: outside } = record.conditions
    const density = (celsius: number, humidity: number) => {
      const vapour = humidity * 610.78 * Math.exp((17.27 * celsius) / (celsius + 237.3))
      return ((record.conditions.barometricPressure_Pa ?? 0) - 0.378 * vapour) / (287.05 * (celsius + 273.15))
    }
    expect(density(inside, 0) / density(inside, 0.45)).toBeGreaterThan(1.002)
    expect(density(outside, 0) / density(outside, 0.75)).toBeGreaterThan(1.001)
    const dry = structuredClone(record)
    dry.conditions.indoorRelativeHumidity = 0
    dry.conditions.outdoorRelativeHumidity = 0
    const flow = evaluate(dry).runs[0]?.q50.value ?? 0
    const bytes = await ownWorkbook((sheet) => {
      set(sheet, 'E3', flow)
      sheet.getCell('E3').numFmt = '0.0000'
    })
    const strict = await rerun(bytes)
    expect(strict?.outcome).toBe('differs')
    expect(strict?.notes).toContain('depressurisation: q50 would agree if dry air is assumed (density)')
    const results = layout.results?.map((one) =>
      one.figure === 'q50' ? { ...one, tolerance_relative: 0.01 } : one,
    )
    const [lenient] = await rerunFile(bytes, 'own.xlsx', { layouts: [parseLayout({ ...layout, results })] })
    expect([lenient?.outcome, lenient?.why]).toEqual([
      'agrees',
      'all 5 recorded results agree at the displayed precision, or within the tolerance the layout states',
    ])
    const tight = layout.results?.map((one) =>
      one.figure === 'q50' ? { ...one, tolerance_relative: 1e-6 } : one,
    )
    const [other] = await rerunFile(bytes, 'own.xlsx', {
      layouts: [parseLayout({ ...layout, results: tight })],
    })
    expect(other?.outcome).toBe('differs')
  })

  it('finds a changed reading through the results that no longer follow from it', async () => {
    const test = await rerun(await ownWorkbook((sheet) => set(sheet, 'B13', 400)))
    expect(test?.outcome).toBe('differs')
  })

  it('says so where no layout fits, or the layout names no results', async () => {
    const bytes = await ownWorkbook()
    const [none] = await rerunFile(bytes, 'own.xlsx')
    expect(none?.why).toBe(
      'this is not a Draughtbook summary, and no layout fits it: evaluate the log first, then give its summary',
    )
    const { results: _, ...bare } = layout
    const [unnamed] = await rerunFile(bytes, 'own.xlsx', { layouts: [parseLayout(bare)] })
    expect(unnamed?.outcome).toBe('cannot be read')
    expect(unnamed?.why).toMatch(/names no recorded results/)
  })

  it('stands in the register with the figures of its evaluation', async () => {
    const { lines, leftOut } = readLines(await ownWorkbook(), 'own.xlsx', layouts)
    expect(leftOut).toEqual([])
    expect(lines[0]).toMatchObject({ source: 'own layout', building: 'Plot 77', date: '2026-10-12' })
    expect(lines[0]?.results.n50).toBe(results.n50?.value)
  })
})

describe('what a cell shows', () => {
  it.each([
    [0.474, '0.00', 2],
    [0.474, 'General', 3],
    [1234, '#,##0', 0],
    [0.474, '0.0" 1/h"', 1],
    [0.47, '0%', 2],
    [0.47, '0.0%', 3],
    [1234, '0.0E+00', -2],
    [-5, '0.00;-0.0', 1],
    [1 / 3, 'General', 9],
  ])('%d as %s has %i decimal places', (value, format, places) => {
    expect(decimalsOf(value, format)).toBe(places)
  })

  it('reads typed numbers with the places typed', () => {
    expect(displayedNumber({ kind: 'text', value: '0,47 1/h' }, ',')).toEqual({ value: 0.47, decimals: 2 })
    expect(displayedNumber({ kind: 'text', value: '115' })).toEqual({ value: 115, decimals: 0 })
    expect(displayedNumber({ kind: 'text', value: 'none' })).toBeUndefined()
    expect(displayedNumber({ kind: 'error', value: '#DIV/0!' })).toBeUndefined()
  })
})
