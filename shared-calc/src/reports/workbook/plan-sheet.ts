import type { Workbook, Worksheet } from 'exceljs'
import { unitText } from '../../catalogue/shown-figure.js'
import { capital } from '../../catalogue/words.js'
import type { Direction } from '../../contract/record/index.js'
import { bestDevice, flowSpans, servingRanges } from '../../site/plan/coverage.js'
import { planFindings } from '../../site/plan/findings.js'
import type { PlanRequest } from '../../site/plan/request.js'
import { deviceInWords } from '../../site/plan/words.js'
import type { WorkedPlan } from '../../site/plan/work-plan.js'
import { live, logged, loggedDay, type Shown, writeLine, writeTable } from './live-cell.js'
import { setUpPage } from './page.js'
import type { Places } from './places.js'
import { dress, fonts, headingRow } from './styles.js'

export const PLAN = 'Plan'
/** Blanks to write zero-flow pressures on: as many as the methods ask for at least. */
const ZERO_FLOW_BLANKS = 10
const COLUMNS = 9
const WIDE = { columns: COLUMNS, perRow: 120 }

/** The sheet for the site: one A4 page with pressures to set, expected flows, and room to write. */
export function writePlanSheet(
  workbook: Workbook,
  request: PlanRequest,
  worked: WorkedPlan,
  places: Places,
): void {
  const sheet = workbook.addWorksheet(PLAN, { views: [{ showGridLines: false }] })
  sheet.columns = [11, 11, 9, 9, 9, 17, 12, 12, 12].map((width) => ({ width }))
  dress(sheet.getCell('A1'), { font: fonts.title }).value = 'Test plan'
  sheet.getRow(1).height = 26
  let row = identity(sheet, request, worked, places, 2)
  row = writeLine(sheet, row, targetText(worked), WIDE)
  row = writeZeroLine(sheet, row, worked)
  for (const direction of worked.pressures?.byDirection.keys() ?? [])
    row = writeDirection(sheet, row + 1, worked, direction, places)
  headingRow(sheet, row + 1, 'Devices', COLUMNS)
  row += 2
  const words = [...worked.devices].flatMap(([device, directions]) =>
    deviceInWords(worked, device, directions).map((text) => `${device.name}: ${text}`),
  )
  for (const text of words.length > 0 ? words : ['No flow device was entered.'])
    row = writeLine(sheet, row, text, { ...WIDE, font: fonts.muted })
  headingRow(sheet, row + 1, 'Weather and findings', COLUMNS)
  row = writeWeather(sheet, row + 2, worked, places)
  for (const { severity, message, remedy } of planFindings(request, worked).filter(
    (finding) => finding.severity !== 'note',
  ))
    row = writeLine(sheet, row, `${capital(severity)}: ${message} ${remedy ?? ''}`, WIDE)
  for (const { message } of planFindings(request, worked).filter((finding) => finding.severity === 'note'))
    row = writeLine(sheet, row, message, { ...WIDE, font: fonts.small })
  row = signature(sheet, row + 1)
  setUpPage(sheet, {
    landscape: false,
    title: `Test plan: ${request.building.name}`,
    lastRow: row,
    lastColumn: COLUMNS,
    onePage: true,
  })
}

function identity(
  sheet: Worksheet,
  { building, plan, preparation }: PlanRequest,
  { method }: WorkedPlan,
  places: Places,
  start: number,
): number {
  const lines: [string, Shown, string, Shown][] = [
    [
      'Building',
      logged(places, 'building.name', building.name),
      'Day',
      loggedDay(places, 'plan.day', plan.day) ?? { value: 'open' },
    ],
    [
      'Address',
      logged(places, 'building.address', building.address ?? ''),
      'Method',
      { value: `${method.title}${preparation ? `, ${preparation}` : ''}` },
    ],
    [
      'Volume, m³',
      logged(places, 'building.volume_m3', building.volume_m3 ?? 'not known'),
      'Basis',
      logged(places, 'building.volumeBasis', building.volumeBasis ?? 'not stated'),
    ],
  ]
  lines.forEach(([left, first, right, second], i) => {
    const row = start + i
    dress(sheet.getCell(row, 1), { font: fonts.muted }).value = left
    sheet.mergeCells(row, 2, row, 5)
    dress(sheet.getCell(row, 2), { alignment: { horizontal: 'left', shrinkToFit: true } }).value = first.value
    dress(sheet.getCell(row, 6), { font: fonts.muted }).value = right
    sheet.mergeCells(row, 7, row, COLUMNS)
    dress(sheet.getCell(row, 7), { alignment: { horizontal: 'left' } }).value = second.value
  })
  return start + lines.length + 1
}

function targetText({ target, allowance }: WorkedPlan): string {
  if (!target || !allowance) return 'No target was set, so no expected flows are given.'
  const flow = allowance.block.value('q_t')
  const { label, quantity, limit, unit } = target.target
  return `Target: ${label}, ${quantity} ≤ ${limit} ${unitText(unit)}. The building just meets it with ${flow.toFixed(flow < 100 ? 1 : 0)} m³/h at ${allowance.referencePressure_Pa} Pa.`
}

function writeZeroLine(sheet: Worksheet, row: number, { pressures, method }: WorkedPlan): number {
  const { zeroFlow_Pa, zeroFlowSamples, zeroFlowDuration_s, averagingTime_s } = method.limits
  const text = `Zero-flow pressure before and after each run, fan covered: at least ${zeroFlowSamples.value} values over ${zeroFlowDuration_s} s, within ±${zeroFlow_Pa.value} Pa. Each reading averaged over ${averagingTime_s.value} s.`
  const repeats = method.stations ? ` ${method.stations.repeats.value} readings at each pressure.` : ''
  const lowest = pressures
    ? ` Lowest usable pressure: ${pressures.lowest.value('dp_min').toFixed(1)} Pa.`
    : ''
  return writeLine(sheet, row, text + repeats + lowest, WIDE)
}

function writeDirection(
  sheet: Worksheet,
  start: number,
  worked: WorkedPlan,
  direction: Direction,
  places: Places,
): number {
  const set = worked.pressures?.byDirection.get(direction)
  if (!set) return start
  headingRow(sheet, start, direction === 'pressurisation' ? 'Pressurisation' : 'Depressurisation', COLUMNS)
  const flows = worked.flows.get(direction) ?? []
  const chosen = bestDevice(worked)
  const device = chosen && worked.devices.get(chosen)?.find((one) => one.direction === direction)
  const serving = device && servingRanges(device, flowSpans(worked, direction))
  const judged = worked.flows.size > 0 && worked.devices.size > 0
  const rangeText = (row: number): string => {
    const labels = (serving?.[row] ?? []).map(({ range }) => range.label)
    if (labels.length > 0) return labels.join(' or ')
    return judged ? 'out of reach' : ''
  }
  const last = writeTable(
    sheet,
    start + 1,
    [
      { head: 'pressure\nPa', align: 'center' },
      { head: 'gauge\nshows, Pa', align: 'center' },
      { head: 'm³/h at\nn 0.55', align: 'center' },
      { head: 'm³/h at\nn 0.65', align: 'center' },
      { head: 'm³/h at\nn 0.75', align: 'center' },
      { head: 'range', align: 'left' },
      { head: 'read\nPa', align: 'center' },
      { head: 'read\nm³/h or Pa', align: 'center' },
      { head: 'range used', align: 'left' },
    ],
    Array.from({ length: set.rows }, (_, row) => [
      live(places, set, 'dp', '0', row),
      live(places, set, 'dp_g', '0.0', row),
      ...[0, 1, 2].map((i) => {
        const block = flows[i]
        return block && live(places, block, 'q_m', '0', row)
      }),
      rangeText(row),
    ]),
  )
  for (let row = start + 2; row < last; row += 1) {
    sheet.getRow(row).height = 17
    for (let column = 7; column <= COLUMNS; column += 1)
      sheet.getCell(row, column).border = {
        top: { style: 'thin' },
        bottom: { style: 'thin' },
        left: { style: 'thin' },
        right: { style: 'thin' },
      }
  }
  const blanks = Array.from({ length: ZERO_FLOW_BLANKS }, () => '_______').join('  ')
  const before = writeLine(sheet, last + 1, `Zero-flow pressure before, Pa:  ${blanks}`, WIDE)
  return writeLine(sheet, before, `Zero-flow pressure after, Pa:     ${blanks}`, WIDE)
}

function writeWeather(
  sheet: Worksheet,
  start: number,
  { stack, stackMeasure, method }: WorkedPlan,
  places: Places,
): number {
  if (!stack || !stackMeasure) return start
  const limit = method.limits.heightTemperature_mK?.value ?? 'no limit'
  return writeTable(
    sheet,
    start,
    [{ head: 'h × ΔT\nm·K' }, { head: 'at most' }, { head: 'stack\nPa' }, { head: 'at the\nfoot, Pa' }],
    [
      [
        live(places, stackMeasure, 'h_T', '0'),
        limit,
        live(places, stack, 'dp_st', '0.0'),
        live(places, stack, 'dp_foot', '0.0'),
      ],
    ],
  )
}

function signature(sheet: Worksheet, row: number): number {
  const text =
    'Weather on the day: wind ________ m/s    indoors ________ °C    outdoors ________ °C    barometer ________ hPa    Tester ____________________'
  return writeLine(sheet, row, text, { ...WIDE, font: fonts.muted })
}
