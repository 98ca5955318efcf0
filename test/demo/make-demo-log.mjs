// Writes the demo test log from the demo record: the same invented test, in the shape in which an office would keep it.
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import ExcelJS from 'exceljs'

const here = (name) => fileURLToPath(new URL(name, import.meta.url))
const record = JSON.parse(readFileSync(here('demo-record.json'), 'utf8'))
const { building, test, conditions, pressureGauge, flowDevice, runs } = record

const workbook = new ExcelJS.Workbook()
workbook.creator = 'Draughtbook demonstration'
workbook.created = workbook.modified = new Date('2026-10-14T12:00:00Z')
const log = workbook.addWorksheet('Log', { views: [{ showGridLines: true }] })
log.columns = [30, 18, 12, 4, 14, 14, 12, 14, 14].map((width) => ({ width }))
const bold = { bold: true }

log.getCell('A1').value = 'Test log (demonstration: house, people and readings are invented)'
log.getCell('A1').font = { bold: true, size: 14 }
const facts = [
  ['Test', test.id, ''],
  ['Date', new Date(`${test.date}T00:00:00Z`), ''],
  ['Stage', test.stage, ''],
  ['Site', building.site, ''],
  ['Building', building.name, ''],
  ['Address', building.address, ''],
  ['Client', test.client, ''],
  ['Tester', test.tester, ''],
  ['Organisation', test.organisation, ''],
  ['Method', test.method, ''],
  ['Preparation', test.preparation, ''],
  ['Target', record.target.preset, ''],
  ['Purpose', test.purpose, ''],
  ['Notes', test.notes, ''],
  ['Internal volume', building.volume_m3, 'm³'],
  ['Volume basis', building.volumeBasis, ''],
  ['Uncertainty of the volume', building.volumeUncertainty_m3, 'm³'],
  ['Envelope area', building.envelopeArea_m2, 'm²'],
  ['Floor area', building.floorArea_m2, 'm²'],
  ['Building height', building.height_m, 'm'],
  ['Altitude', building.altitude_m, 'm'],
  ['Indoor temperature', conditions.indoorTemperature_C, '°C'],
  ['Outdoor temperature', conditions.outdoorTemperature_C, '°C'],
  ['Barometric pressure', conditions.barometricPressure_Pa / 100, 'hPa'],
  ['Indoor relative humidity', conditions.indoorRelativeHumidity * 100, '%'],
  ['Wind speed', conditions.windSpeed_m_s, 'm/s'],
  ['Wind taken at', conditions.windAt, ''],
  ['Wind force (Beaufort)', conditions.beaufort, ''],
  ['Gauge serial number', pressureGauge.serial, ''],
  ['Gauge calibration due', new Date(`${pressureGauge.calibrationDue}T00:00:00Z`), ''],
  ['Device serial number', flowDevice.serial, ''],
  ['Device calibration due', new Date(`${flowDevice.calibrationDue}T00:00:00Z`), ''],
  ['Device reference density', flowDevice.referenceDensity_kg_m3, 'kg/m³'],
]
facts.forEach(([label, value, unit], i) => {
  log.getCell(3 + i, 1).value = label
  const cell = log.getCell(3 + i, 2)
  cell.value = value
  if (value instanceof Date) cell.numFmt = 'yyyy-mm-dd'
  cell.alignment = { horizontal: 'left' }
  log.getCell(3 + i, 3).value = unit
})

runs.forEach((run, k) => {
  const top = 3 + k * 18
  log.getCell(top, 5).value = run.direction === 'depressurisation' ? 'Depressurisation' : 'Pressurisation'
  log.getCell(top, 5).font = bold
  log.getCell(top + 1, 5).value = 'Averaging time'
  log.getCell(top + 1, 6).value = run.averagingTime_s
  log.getCell(top + 1, 7).value = 's'
  const heads = ['Pressure [Pa]', 'Device [Pa]', 'Range', 'Zero before [Pa]', 'Zero after [Pa]']
  heads.forEach((head, i) => {
    log.getCell(top + 2, 5 + i).value = head
    log.getCell(top + 2, 5 + i).font = bold
  })
  run.readings.forEach((reading, i) => {
    log.getCell(top + 3 + i, 5).value = reading.pressure_Pa
    log.getCell(top + 3 + i, 6).value = reading.devicePressure_Pa
    log.getCell(top + 3 + i, 7).value = reading.range
  })
  run.zeroFlowBefore_Pa.forEach((value, i) => {
    log.getCell(top + 3 + i, 8).value = value
  })
  run.zeroFlowAfter_Pa.forEach((value, i) => {
    log.getCell(top + 3 + i, 9).value = value
  })
})

const ranges = workbook.addWorksheet('Device ranges')
ranges.columns = [14, 16, 12, 18, 18, 18, 18].map((width) => ({ width }))
ranges.addRow([
  'Range',
  'Coefficient',
  'Exponent',
  'Lowest pressure [Pa]',
  'Highest pressure [Pa]',
  'Lowest flow [m³/h]',
  'Highest flow [m³/h]',
]).font = bold
for (const range of flowDevice.ranges)
  ranges.addRow([
    range.label,
    range.coefficient,
    range.exponent,
    range.minimumPressure_Pa,
    range.maximumPressure_Pa,
    range.minimumFlow_m3_h,
    range.maximumFlow_m3_h,
  ])

const openings = workbook.addWorksheet('Openings')
openings.columns = [50, 14, 30].map((width) => ({ width }))
openings.addRow(['Opening', 'State', 'Note']).font = bold
for (const { opening, state, note } of test.openings) openings.addRow([opening, state, note ?? null])

await workbook.xlsx.writeFile(here('demo-log.xlsx'))
