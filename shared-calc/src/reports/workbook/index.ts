export { addCharts } from './chart/add-charts.js'
export type { ChartDescription } from './chart/description.js'
export { printStyle } from './chart/print-style.js'
export { digestOfParts } from './issued/issued-parts.js'
export { MOST_READINGS, type TemplateOptions, writeLogTemplate } from './log-template/write-log-template.js'
export {
  type ChosenPictures,
  choosePictures,
  type PhotoBytes,
  type PictureSources,
} from './pictures/choose-pictures.js'
export { PICTURE_LIMITS } from './pictures/picture.js'
export { parseRecordRows, type ReadSummary, readSummaryWorkbook } from './read-summary.js'
export { RECORD, RECORD_SHEET_FORMAT } from './record-sheet.js'
export { type RecordSignature, signedMessage } from './record-signature.js'
export { type TakeOffInput, writePlanWorkbook, writeTakeOffWorkbook } from './write-site.js'
export { type SummaryOptions, writeSummary, writeSummaryWorkbook } from './write-summary.js'
