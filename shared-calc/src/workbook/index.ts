export { addCharts, type ChartDescription, printStyle } from './chart/index.js'
export { parseRecordRows, type ReadSummary, readSummaryWorkbook } from './read-summary.js'
export { RECORD, RECORD_SHEET_FORMAT } from './record-sheet.js'
export { type SummaryOptions, writeSummary, writeSummaryWorkbook } from './write-summary.js'
