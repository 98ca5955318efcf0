/** Reads test logs as firms keep them: layouts, dirty cells, raw gauge series. Bytes or cells in; records, findings, cells out. */
export { fileText } from '../catalogue/findings/log/file.js'
export { pageText } from '../catalogue/findings/page.js'
export { type Remark, remarkFinding } from '../catalogue/findings/remark.js'
export type { Finding } from '../contract/record/index.js'
export { dateOfSerial, isDateFormat } from './cells/dates.js'
export { type FieldKind, fieldKind } from './cells/fields.js'
export { type Interpreted, interpret, type Reading } from './cells/interpret.js'
export { findUnit, type KnownUnit, RECORD_UNITS, shown, toRecordUnit } from './cells/units.js'
export { guardSizes } from './container/guard.js'
export { sniff } from './container/sniff.js'
export { listEntries } from './container/zip.js'
export { type Block, type Place, withSheet } from './grid/address.js'
export type { Cell, DefinedName, Grid, Sheet } from './grid/grid.js'
export { formulaText as spreadsheetFormula } from './grid/ods/formula-text.js'
export { CellRange, gridFromRanges } from './grid/ranges.js'
export { encodingOf, type TextEncoding } from './grid/text/decode.js'
export { findSeparator } from './grid/text/dialect.js'
export { splitFields } from './grid/text/split-fields.js'
export { wholePath } from './interpret/answers.js'
export { answersLayout } from './interpret/answers-layout.js'
export { type InterpretOptions, interpretLog } from './interpret/interpret.js'
export type {
  Answers,
  Choice,
  Interpretation,
  InterpretedTest,
  Question,
  Use,
} from './interpret/interpretation.js'
export { testWithAnswers } from './interpret/test-with-answers.js'
export type { ReadTest } from './layout/apply.js'
export { chooseLayout } from './layout/fingerprint.js'
export { LAYOUT_SHEET, layoutPieces, savedLayout } from './layout/saved-with.js'
export { LAYOUT_FORMAT, Layout, type LayoutInput, parseLayout } from './layout/schema.js'
export { setPath } from './layout/set-path.js'
export { builtInLayouts } from './layouts/built-in.js'
export { LIMITS } from './limits.js'
export { openLog } from './open-log.js'
export { ownReport, type ReportKind, reportKind } from './own-report.js'
export type { ListRole, PickedCells, PickedField, PickedLists, PickedQuestion } from './picked/picks.js'
export { type ReadPicks, type ReadRunCells, readPicks } from './picked/read-picks.js'
export { LogError, type LogProblem, type LogProblemCode } from './problem.js'
export { type LogTest, type ReadLog, type ReadOptions, readGrid, readLog, testsOf } from './read-log.js'
export { ReadingsAnswer, ReadingsRequest, readRanges } from './read-ranges.js'
export {
  type PickedRun,
  type PickedSeries,
  readPickedSeries,
  type SeriesSettings,
} from './series/picked-series.js'
export type { SeriesReading } from './series/read-series.js'
export { seriesChart } from './series/series-chart.js'
export { type ToldStation, toldStations } from './series/told-stations.js'
