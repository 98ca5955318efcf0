import { deviceWorkbook } from './device-workbook'
import { dirtySheet } from './dirty-sheet'
import { englishForm } from './english-form'
import { frenchSheet } from './french-sheet'
import { germanProtocol } from './german-protocol'
import { inchPound } from './inch-pound'
import { longTable } from './long-table'
import { oldMacroBook } from './old-macro-book'
import { rowPerTest } from './row-per-test'
import { seriesSheet } from './series-sheet'
import { seriesText } from './series-text'
import { sheetPerTest } from './sheet-per-test'
import { stackedBlocks } from './stacked-blocks'
import { tabbedText } from './tabbed-text'

export const madeUpLogs = [
  englishForm,
  germanProtocol,
  frenchSheet,
  inchPound,
  sheetPerTest,
  rowPerTest,
  longTable,
  stackedBlocks,
  deviceWorkbook,
  dirtySheet,
  oldMacroBook,
  tabbedText,
  seriesText,
  seriesSheet,
]
