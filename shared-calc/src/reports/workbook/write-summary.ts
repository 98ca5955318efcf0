import ExcelJS, { type Workbook } from 'exceljs'
import { type AssessedTest, evaluateWorked } from '../../assessment/evaluate.js'
import type { CellMap } from '../../contract/problem.js'
import type { Evaluation, Finding, TestRecord } from '../../contract/record/index.js'
import { methodById } from '../../methods/index.js'
import { reference } from './address.js'
import type { ChartDescription } from './chart/description.js'
import { finishCheckSheet, writeCheckSheet } from './check-sheet.js'
import { type PublishedFigure, publishedFigures } from './figures.js'
import { holdTexts } from './held-texts.js'
import { issue } from './issued/issue.js'
import { packSummary } from './issued/pack-summary.js'
import type { PlacedPicture } from './pictures/add-pictures.js'
import type { ChosenPictures } from './pictures/choose-pictures.js'
import type { Pictures } from './pictures/picture.js'
import { Places } from './places.js'
import { writeReadingsSheet } from './readings-sheet.js'
import { writeRecordSheet } from './record-sheet.js'
import type { RecordSignature } from './record-signature.js'
import { addReportSheet, writeReportSheet } from './report-sheet.js'
import { writeSiteSheets } from './site-sheets.js'
import { leakageChart } from './summary-chart.js'
import { placeLogo } from './summary-head.js'
import { addSummarySheet, fillSummarySheet } from './summary-sheet.js'
import { writeUncertaintySheet } from './uncertainty-sheet.js'
import { writeWorkingSheet } from './working-sheet.js'
import { writeParts } from './zip/parts.js'

export interface SummaryOptions {
  /** Field path → cell address in the log that the record was read from. */
  readonly cells?: CellMap
  /** What reading the log had to convert or leave out. */
  readonly findings?: readonly Finding[]
  /** Whether to add sheet Uncertainty and its working; always where the record has an uncertainty part. */
  readonly uncertainty?: boolean
  /** Photos and the firm's logo, as `choosePictures` gives them; what it left out becomes findings. */
  readonly pictures?: ChosenPictures
  /** Signs the message of {@link signedMessage}; the workbook then carries the signature. */
  readonly sign?: (message: string) => RecordSignature
}

/**
 * The summary workbook of a test: Summary, Readings, Working, Check, Record. The same record gives the same bytes.
 * @param record - a record that `parseRecord` has checked
 * @throws InputError when the record cannot be evaluated
 */
export async function writeSummaryWorkbook(
  record: TestRecord,
  options: SummaryOptions = {},
): Promise<Uint8Array> {
  return (await writeSummary(record, options)).bytes
}

/** The workbook with the evaluation and the chart it shows. */
export async function writeSummary(
  record: TestRecord,
  { cells, findings, pictures, sign, uncertainty }: SummaryOptions = {},
): Promise<{ bytes: Uint8Array; evaluation: Evaluation; chart: ChartDescription }> {
  const worked = evaluateWorked(record, {
    ...(cells && { cells }),
    ...((findings || pictures) && { findings: [...(findings ?? []), ...(pictures?.findings ?? [])] }),
    ...(uncertainty && { uncertainty }),
  })
  const { evaluation } = worked
  const laidOut = await layOutSummary(record, worked, undefined, pictures)
  const parts = await packSummary(laidOut)
  issue(parts, evaluation, sign)
  return { bytes: writeParts(parts), evaluation, chart: laidOut.chart }
}

/** Every cell of a summary, before it becomes a file. Re-run compares archived workbooks with this. */
export async function layOutSummary(
  record: TestRecord,
  { evaluation, test }: { readonly evaluation: Evaluation; readonly test: AssessedTest },
  signature?: RecordSignature,
  pictures?: Pictures,
): Promise<{
  workbook: ExcelJS.Workbook
  chart: ChartDescription
  places: Places
  pictures: readonly PlacedPicture[]
}> {
  const places = new Places()
  const workbook = newWorkbook(record)
  const summary = addSummarySheet(workbook)
  const report = addReportSheet(workbook)
  writeReadingsSheet(workbook, record, places)
  writeWorkingSheet(workbook, test.calculation, places)
  const leakPhotos = writeSiteSheets(workbook, record, test, places, pictures)
  if (test.uncertainty) writeUncertaintySheet(workbook, evaluation, test.uncertainty, places)
  const figures = publishedFigures(evaluation, test)
  const check = writeCheckSheet(workbook, record, figures, evaluation.findings, places)
  await writeRecordSheet(workbook, record, evaluation, signature, pictures)
  const method = methodById(record.test.method)
  const input = { record, evaluation, test, method, places, check, ...(pictures && { pictures }) }
  const chartRows = fillSummarySheet(summary, input)
  const reportPhotos = writeReportSheet(report, input)
  finishCheckSheet(
    workbook,
    summary,
    check,
    { record, evaluation },
    Math.max(0, ...test.criteria.map(({ value }) => value.value('L'))),
  )
  nameMainResults(workbook, figures, places)
  const drawn = leakageChart(workbook, test, places, chartRows)
  const fields = new Set(
    [...places.fields.values()].map(({ sheet, column, row }) => `${sheet}|${column}|${row}`),
  )
  holdTexts(workbook, ({ worksheet, col, row }) => fields.has(`${worksheet.name}|${col}|${row}`))
  const placed = [...placeLogo(summary, pictures), ...reportPhotos, ...leakPhotos]
  return { workbook, chart: drawn, places, pictures: placed }
}

/** Document properties; dated by the test, so that a workbook written again is the same to the byte. */
function newWorkbook({ building, test }: TestRecord): ExcelJS.Workbook {
  const workbook = new ExcelJS.Workbook()
  const dated = new Date(`${test.date}T12:00:00Z`)
  workbook.creator = test.tester ?? 'Draughtbook'
  workbook.lastModifiedBy = 'Draughtbook'
  workbook.created = dated
  workbook.modified = dated
  workbook.company = test.organisation ?? ''
  workbook.title = `Airtightness test: ${building.name}`
  workbook.subject = 'Summary of a fan-pressurisation test'
  workbook.keywords = 'airtightness, fan pressurisation'
  return workbook
}

/** Names the main results at workbook level, for the reader's own formulas; ours refer by cell. */
function nameMainResults(workbook: Workbook, figures: readonly PublishedFigure[], places: Places): void {
  for (const { name, block, symbol } of figures)
    if (name) workbook.definedNames.add(reference(places.symbol(block, symbol)), name)
}
