import { interpretLog } from '@draughtbook/shared-calc/log'
import ExcelJS from 'exceljs'
import { compare } from './report.js'

const SHEETS = 20
const READINGS = 10

/** A made-up workbook of one firm: a sheet a dwelling, each with its form, both directions and its notes. */
async function twentySheets(): Promise<Uint8Array> {
  const workbook = new ExcelJS.Workbook()
  for (let dwelling = 1; dwelling <= SHEETS; dwelling++) {
    const sheet = workbook.addWorksheet(`Plot ${dwelling}`)
    sheet.addRows([
      ['House', `Plot ${dwelling} (invented)`],
      ['Date', new Date(Date.UTC(2026, 0, dwelling))],
      ['Internal volume (m³)', 240 + dwelling],
      ['Envelope area (m²)', 260 + dwelling],
      ['Inside temperature (°C)', 20.5],
      ['Outside temperature (°C)', 7.5],
      ['Barometer (hPa)', 1008.4],
      [],
      ['Depressurisation', null, null, 'Pressurisation'],
      ['Zero flow before (Pa)', -0.8, null, 'Zero flow before (Pa)', 0.4],
      ['Zero flow after (Pa)', -0.5, null, 'Zero flow after (Pa)', 0.6],
      ['Pressure (Pa)', 'Flow (m³/h)', null, 'Pressure (Pa)', 'Flow (m³/h)'],
    ])
    for (let index = 0; index < READINGS; index++) {
      const pressure = 65 - 5 * index
      const flow = (38 + dwelling) * pressure ** 0.65
      sheet.addRow([-pressure, flow, null, pressure, flow * 1.04])
    }
    for (let line = 0; line < 60; line++) sheet.addRow([`remark ${line}`, 'window', 'as found', line % 7])
  }
  return new Uint8Array(await workbook.xlsx.writeBuffer())
}

/** Proposing how a log of twenty sheets is read, against loading it whole. */
export async function run(): Promise<void> {
  const bytes = await twentySheets()
  const { tests, problems } = interpretLog({ bytes, fileName: 'log.xlsx' })
  if (problems.length > 0 || tests.some(({ record }) => !record) || tests.length !== SHEETS)
    throw new Error(`${tests.length} tests; ${JSON.stringify(problems)}`)
  await compare(
    `A log of ${SHEETS} sheets: every test proposed, with its record, findings and cells`,
    {
      name: 'exceljs: full load of the same workbook',
      run: async () => {
        const workbook = new ExcelJS.Workbook()
        return workbook.xlsx.load(bytes.slice().buffer)
      },
    },
    [
      {
        name: 'interpretLog: nothing described beforehand',
        run: () => interpretLog({ bytes, fileName: 'log.xlsx' }),
      },
    ],
    5,
  )
}
