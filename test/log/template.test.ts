import { readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { evaluate } from '@draughtbook/shared-calc'
import { readLog } from '@draughtbook/shared-calc/log'
import { writeLogTemplate } from '@draughtbook/shared-calc/workbook'
import ExcelJS from 'exceljs'
import { describe, expect, it } from 'vitest'
import { commandLine, folder } from '../service/support/command-line'
import { toPdf } from '../support/libreoffice'
import { pdfPages } from '../support/pdf-pages'
import { inventHouse } from './generated/house'
import { randomFrom } from './generated/random'
import { fitRun } from './generated/truth/fit'

const ISO = { method: 'iso-9972:2015', readings: 10 }

/** The template filled in as a person would: each value in the yellow cell beside its label. */
async function filled(house: ReturnType<typeof inventHouse>, empty?: string): Promise<Uint8Array> {
  const workbook = new ExcelJS.Workbook()
  if (empty !== undefined) await workbook.xlsx.readFile(empty)
  else await workbook.xlsx.load((await writeLogTemplate(ISO)).slice().buffer)
  const sheet = workbook.getWorksheet('Test')
  if (!sheet) throw new Error('the template has no sheet Test')
  const cellOf = (text: string) => {
    let found: ExcelJS.Cell | undefined
    sheet.eachRow((row) =>
      row.eachCell((cell) => {
        if (!found && String(cell.value).startsWith(text)) found = cell
      }),
    )
    if (!found) throw new Error(`nothing reads ${text}`)
    return found
  }
  const put = (label: string, value: ExcelJS.CellValue) => {
    const label_ = cellOf(label)
    sheet.getCell(Number(label_.row), Number(label_.col) + 2).value = value
  }
  put('Building', 'Sorrel House (invented)')
  put('Internal volume', house.volume_m3)
  put('Envelope area', house.envelopeArea_m2)
  put('Indoor temperature', house.indoor_C)
  put('Outdoor temperature', house.outdoor_C)
  put('Barometric pressure', house.barometer_Pa / 100)
  put('Indoor relative humidity', 50)
  put('Outdoor relative humidity', 50)
  put('Date of the test', new Date('2026-10-14T00:00:00Z'))
  put('Averaging time', 20)
  put('Target', 'Passive house, new')
  for (const run of house.runs) {
    const title = run.direction === 'depressurisation' ? 'Depressurisation' : 'Pressurisation'
    const zero = cellOf(`${title}: zero-flow`)
    const table = cellOf(`${title}: readings`)
    const fill = (start: ExcelJS.Cell, column: number, values: readonly number[]) => {
      for (const [index, value] of values.entries())
        sheet.getCell(Number(start.row) + 2 + index, Number(start.col) + column).value = value
    }
    fill(zero, 1, run.before_Pa)
    fill(zero, 2, run.after_Pa)
    fill(
      table,
      1,
      run.readings.map(({ pressure_Pa }) => pressure_Pa),
    )
    fill(
      table,
      2,
      run.readings.map(({ flow_m3_h }) => flow_m3_h),
    )
  }
  return new Uint8Array(await workbook.xlsx.writeBuffer())
}

describe('the log template', () => {
  it('filled in for an invented house gives the leakage worked out apart', async () => {
    const house = inventHouse(randomFrom(417), { readings: 8, zeroFlowValues: 10 })
    const { tests, problems } = readLog(await filled(house), 'log.xlsx')
    expect(problems).toEqual([])
    const record = tests[0]?.record
    if (!record) throw new Error(JSON.stringify(tests[0]?.problems))
    const { results, runs } = evaluate(record)
    const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
    const truth = house.runs.map(({ direction, before_Pa, after_Pa, readings }) =>
      fitRun({ direction, zeroFlow_Pa: (mean(before_Pa) + mean(after_Pa)) / 2, readings }, house),
    )
    expect(runs.map(({ readings }) => readings.length)).toEqual([8, 8])
    for (const [index, run] of truth.entries()) {
      expect(runs[index]?.q50?.value).toBeCloseTo(run.q50_m3_h, 6)
      expect(runs[index]?.airFlowExponent.value).toBeCloseTo(run.exponent, 9)
    }
    expect(results.n50?.value).toBeCloseTo(mean(truth.map(({ q50_m3_h }) => q50_m3_h)) / house.volume_m3, 9)
  })

  it('goes from the command that writes it to a verdict without a question', async () => {
    const here = await folder()
    const [empty, full] = [join(here, 'empty.xlsx'), join(here, 'filled.xlsx')]
    const made = await commandLine('template', '--out', empty, '--readings', '8')
    expect([made.code, made.err]).toEqual([0, []])
    await writeFile(full, await filled(inventHouse(randomFrom(31), { readings: 8, n50: 0.4 }), empty))
    const { code, out, err } = await commandLine('evaluate', full)
    expect([code, err]).toEqual([0, []])
    expect(out).toMatch(/n50: 0\.[34]\d\d 1\/h/)
    expect(out).toContain('Passive house, new')
  })

  it('is not written over a file that is there, and an empty one names every field it lacks with its cell', async () => {
    const empty = join(await folder(), 'log.xlsx')
    expect((await commandLine('template', '--out', empty)).code).toBe(0)
    const before = await readFile(empty)
    const again = await commandLine('template', '--out', empty, '--readings', '5')
    expect(again.code).toBe(2)
    expect(again.err[0]).toContain(`${empty} already exists`)
    expect(await readFile(empty)).toEqual(before)
    expect((await commandLine('template', '--out', empty, '--readings', '5', '--force')).code).toBe(0)
    const { code, err } = await commandLine('evaluate', empty)
    expect(code).toBe(2)
    for (const term of ['building name', 'test date', 'indoor temperature', 'outdoor temperature'])
      expect(err).toContainEqual(expect.stringMatching(new RegExp(`Test![A-Z]+\\d+: ${term} is missing$`)))
  })

  it('is read where only one direction was run', async () => {
    const house = inventHouse(randomFrom(77), { readings: 7, directions: ['pressurisation'] })
    const { tests } = readLog(await filled(house), 'log.xlsx')
    expect(tests[0]?.problems).toEqual([])
    expect(tests[0]?.record?.runs.map(({ direction, readings }) => [direction, readings.length])).toEqual([
      ['pressurisation', 7],
    ])
    // The right half of the form, where pressurisation stands.
    expect(tests[0]?.cells['runs[0].readings[0].pressure_Pa']).toMatch(/^Test!G\d+$/)
    expect(tests[0]?.findings.some(({ rule }) => rule === 'log-blank-run')).toBe(true)
  })

  it('keeps what was typed below a row left blank', async () => {
    const house = inventHouse(randomFrom(5), { readings: 6 })
    const workbook = new ExcelJS.Workbook()
    await workbook.xlsx.load((await filled(house)).slice().buffer)
    const sheet = workbook.getWorksheet('Test') as ExcelJS.Worksheet
    let heading = 0
    sheet.eachRow((row) => {
      if (row.getCell(1).value === 'Depressurisation: readings') heading = row.number
    })
    for (const column of [2, 3]) sheet.getCell(heading + 4, column).value = null
    const { tests } = readLog(new Uint8Array(await workbook.xlsx.writeBuffer()), 'log.xlsx')
    const run = tests[0]?.record?.runs[0]
    expect(run?.readings.length).toBe(5)
    expect(
      tests[0]?.findings.some(
        ({ rule, cells }) => rule === 'log-blank' && cells?.[0]?.includes(`B${heading + 4}`),
      ),
    ).toBe(true)
  })

  it('fills in the method asked for, and refuses others and too many readings with what is possible', async () => {
    const workbook = new ExcelJS.Workbook()
    const bytes = await writeLogTemplate({ method: 'en-13829:2001', readings: 5 })
    await workbook.xlsx.load(bytes.slice().buffer)
    const texts: string[] = []
    workbook.getWorksheet('Test')?.eachRow((row) => row.eachCell((cell) => texts.push(String(cell.value))))
    expect(texts).toContain('EN 13829:2001')
    await expect(writeLogTemplate({ ...ISO, method: 'iso-1' })).rejects.toThrow(/no test method "iso-1"/)
    await expect(writeLogTemplate({ ...ISO, readings: 21 })).rejects.toThrow(/from 1 to 20/)
    await expect(writeLogTemplate({ ...ISO, readings: Number.NaN })).rejects.toThrow(/from 1 to 20/)
  })

  it('prints on one A4 page, with the most readings too', async () => {
    const pages = await pdfPages(
      await toPdf(await writeLogTemplate({ ...ISO, readings: 20 })),
      'log-template',
    )
    expect(pages.length).toBe(1)
  })
})
