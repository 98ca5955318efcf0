import type { LayoutInput } from '@draughtbook/shared-calc/log'
import ExcelJS from 'exceljs'

/** How many different workbooks the bench reads in turn. */
export const WORKBOOKS = 200

/**
 * A made-up six-sheet log: a cover, the readings, openings, device ranges, a sheet of formulas and one of notes. The layout
 * below needs the cover and the readings only.
 * @param own - every workbook has formats and a sheet's name of its own, so that no part but the relations is like another's
 */
export async function sixSheets(index: number, own = false): Promise<Uint8Array> {
  const workbook = new ExcelJS.Workbook()
  const cover = workbook.addWorksheet('Cover')
  cover.addRows([
    ['Building', `Plot ${index} (invented)`],
    ['Date', new Date(Date.UTC(2026, 0, 1 + (index % 300)))],
    ['Volume', 200 + index / 10, 'm³'],
    ['Envelope area', 250 + index / 8, 'm²'],
    ['Inside', 20.5, '°C'],
    ['Outside', 8.25, '°C'],
    ['Barometer', 1008.4, 'hPa'],
    ['Method', 'ISO 9972'],
  ])
  const log = workbook.addWorksheet('Readings')
  log.addRow(['Pressure (Pa)', 'Flow (m³/h)', 'Zero flow before (Pa)', 'Zero flow after (Pa)', 'Remark'])
  for (let row = 0; row < 10; row++)
    log.addRow([
      -70 + 5 * row,
      60 * (70 - 5 * row) ** 0.65,
      -0.5 - row / 100,
      -0.4 - row / 100,
      `reading ${row}`,
    ])
  const openings = workbook.addWorksheet('Openings')
  for (let row = 0; row < 40; row++)
    openings.addRow([`opening ${row}`, row % 2 ? 'closed' : 'sealed', 'as found'])
  const device = workbook.addWorksheet('Device')
  for (let row = 0; row < 30; row++) device.addRow([`range ${row}`, 10 + row, 0.5, 25, 300])
  const sums = workbook.addWorksheet('Sums')
  for (let row = 1; row <= 120; row++)
    sums.addRow([
      row,
      { formula: `A${row}*2`, result: 2 * row },
      { formula: `LN(B${row})`, result: Math.log(2 * row) },
    ])
  const notes = workbook.addWorksheet(own ? `Notes ${index}` : 'Notes')
  if (own) notes.getCell('A1').numFmt = `0.0" of ${index}"`
  for (let row = 0; row < 60; row++)
    notes.addRow([`note ${row} of ${index}`, 'nothing out of the ordinary was seen'])
  return new Uint8Array(await workbook.xlsx.writeBuffer())
}

const column = (header: string) => ({ at: { header, sheet: 'Readings' } })

export const sixSheetLayout: LayoutInput = {
  format: 'draughtbook/layout@1',
  name: 'six sheets',
  fields: [
    ['building.name', 'Building'],
    ['test.date', 'Date'],
    ['building.volume_m3', 'Volume'],
    ['building.envelopeArea_m2', 'Envelope area'],
    ['conditions.indoorTemperature_C', 'Inside'],
    ['conditions.outdoorTemperature_C', 'Outside'],
    ['conditions.barometricPressure_Pa', 'Barometer'],
    ['test.method', 'Method'],
  ].map(([path = '', label = '']) => ({ path, at: { label, sheet: 'Cover' } })),
  runs: [
    {
      direction: 'depressurisation',
      pressure: column('Pressure'),
      flow: column('Flow'),
      zeroFlowBefore: column('Zero flow before'),
      zeroFlowAfter: column('Zero flow after'),
    },
  ],
}
