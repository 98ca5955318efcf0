import { sniff } from './container/sniff.js'
import type { Grid } from './grid/grid.js'
import { openSpreadsheet } from './grid/ods/open-spreadsheet.js'
import { openText } from './grid/text/open-text.js'
import { openWorkbook } from './grid/xlsx/open-workbook.js'
import { LIMITS } from './limits.js'
import { refuse } from './problem.js'

/**
 * Opens a log file as a grid of cells: .xlsx, .xlsm, .ods, or separated text. Guards come before anything is unpacked.
 * @param decimal - the decimal sign of a text file, where a layout states it
 * @throws LogError when the file is too large, hostile, damaged or of a kind that is not read
 */
export function openLog(bytes: Uint8Array, fileName: string, decimal?: '.' | ','): Grid {
  if (bytes.length > LIMITS.fileBytes)
    refuse(
      'too-large',
      `the file has ${Math.ceil(bytes.length / 1024 / 1024)} MB; at most ${LIMITS.fileBytes / 1024 / 1024} MB are read`,
    )
  const kind = sniff(bytes, fileName)
  if (kind === 'text') return openText(bytes, fileName, decimal)
  return kind === 'workbook' ? openWorkbook(bytes, fileName) : openSpreadsheet(bytes, fileName)
}
