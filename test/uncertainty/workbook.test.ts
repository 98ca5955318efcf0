import { parseRecord } from '@draughtbook/shared-calc'
import { readSummaryWorkbook, writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import ExcelJS from 'exceljs'
import { describe, expect, it } from 'vitest'
import { powerLaw, recordBy, usual_Pa } from '../methods/record-by'
import { compareCached, readCells } from '../support/formula-cells'
import { randomRecord } from './random-record'

/** Residuals of exact readings are zero but for rounding, and so is all that is made of them. */
const ROUNDING = { relative: 1e-9, absolute: 1e-11 }

describe('the uncertainty in the summary workbook', () => {
  it('is made of live formulas that LibreOffice confirms', async () => {
    const bytes = await writeSummaryWorkbook(parseRecord(randomRecord(3)))
    expect(await compareCached(bytes, ROUNDING)).toEqual([])
  })

  it('has a sheet with every budget and the decision in words, and comes back with the record', async () => {
    const record = parseRecord(randomRecord(3))
    const bytes = await writeSummaryWorkbook(record)
    const workbook = new ExcelJS.Workbook()
    await workbook.xlsx.load(new Uint8Array(bytes).buffer)
    const texts: string[] = []
    workbook.getWorksheet('Uncertainty')?.eachRow((row) => {
      row.eachCell((cell) => {
        texts.push(cell.text)
      })
    })
    expect(texts).toContain('Budget of n50')
    expect(texts).toContain('wind: shift of the mean pressure')
    expect(texts.some((text) => /^(meets|fails); /.test(text))).toBe(true)
    const read = await readSummaryWorkbook(bytes)
    expect(read.record).toEqual(record)
    expect(read.evaluation.uncertainty?.figures.map(({ quantity }) => quantity)).toContain('ela4')
  })

  it('is not there where nobody asked for it', async () => {
    const bytes = await writeSummaryWorkbook(recordBy('iso-9972:2015', powerLaw(80, 0.62, usual_Pa)))
    const workbook = new ExcelJS.Workbook()
    await workbook.xlsx.load(new Uint8Array(bytes).buffer)
    expect(workbook.getWorksheet('Uncertainty')).toBeUndefined()
  })
})

const repeated = (pressures: readonly number[]) => powerLaw(80, 0.62, pressures)

describe('the summary workbook of the further methods', () => {
  it('refers to what each of several devices showed', async () => {
    const record = recordBy('astm-e3158-18', repeated([78, 72, 66, 60, 54, 48, 42, 36, 30, 26]))
    const runs = record.runs.map((run) => ({
      ...run,
      readings: run.readings.map(({ pressure_Pa, flow_m3_h = 0 }, i) => ({
        pressure_Pa,
        devices: [{ flow_m3_h: flow_m3_h * 0.6 }, { flow_m3_h: flow_m3_h * (0.4 + 0.002 * (i % 3)) }],
      })),
    }))
    const bytes = await writeSummaryWorkbook(parseRecord({ ...record, runs }))
    const cells = (await readCells(bytes)).filter(({ sheet }) => sheet === 'Working')
    const sums = cells
      .filter(({ formula }) => /^SUM\(Readings!/.test(formula))
      .map(({ cached }) => Number(cached))
    const [first] = runs[0]?.readings ?? []
    expect(sums).toHaveLength(20)
    expect(sums[0]).toBeCloseTo((first?.devices[0]?.flow_m3_h ?? 0) + (first?.devices[1]?.flow_m3_h ?? 0), 9)
    expect(await compareCached(bytes, ROUNDING)).toEqual([])
  })

  it.concurrent.each([
    ['astm-e779-19', repeated(usual_Pa)],
    ['astm-e1827-22-one-point', repeated([50, 51, 50, 49, 50])],
    ['astm-e1827-22-two-point', repeated([50, 51, 49, 50, 50, 12.5, 12.4, 12.6, 12.5, 12.5])],
    ['can-cgsb-149.10-2019', repeated(usual_Pa)],
    ['ansi-resnet-icc-380', repeated([50])],
    ['astm-e3158-18', repeated([78, 72, 66, 60, 54, 48, 42, 36, 30, 26])],
  ])(
    '%s recalculates to what it stores, with an uncertainty too',
    async (method, readings) => {
      const rough = readings.map((reading, i) => ({
        ...reading,
        flow_m3_h: reading.flow_m3_h * (1 + 0.004 * Math.sin(7 * i)),
      }))
      const record = recordBy(method, rough, { uncertainty: {}, target: { quantity: 'n50', limit: 3 } })
      // Without one: test/workbook/recalculated.test.ts.
      expect(await compareCached(await writeSummaryWorkbook(record), ROUNDING)).toEqual([])
    },
    300_000,
  )
})
