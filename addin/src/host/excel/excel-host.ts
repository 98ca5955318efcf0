import { joinReference, splitReference } from '../address.js'
import { saveFile } from '../download.js'
import type { CellMark, Host } from '../host.js'
import { type ExcelApi, hostError, inExcel, type SetSupported } from './excel-api.js'
import { readGrid } from './grid.js'
import { insertSheets, toBase64 } from './insert.js'
import { readKept, replaceMarks, writeKept } from './marks.js'
import { workbookPhotos } from './photos.js'
import { locate, readBlock } from './read.js'
import { sheetWatch } from './watch.js'

const SETTINGS_KEY = 'draughtbook.test'

/** Platforms whose Excel shows the pane in a window that saves no files. */
const NO_DOWNLOADS: Readonly<Record<string, string>> = { Mac: 'Excel on a Mac', iOS: 'Excel on an iPad' }

/**
 * The pane beside a workbook in Excel, through Office.js. Needs ExcelApi 1.9, asks for later sets at run time.
 * @param platform as Office names it
 */
export function createExcelHost(excel: ExcelApi, supported: SetSupported, platform = ''): Host {
  let marking: Promise<void> = Promise.resolve()
  const markNow = (marks: readonly CellMark[]) => () =>
    inExcel(excel, 'marking cells', (context) => replaceMarks(context, marks))
  const saving = NO_DOWNLOADS[platform]
  return {
    kind: 'excel',
    unavailable: {
      ...(!supported('ExcelApi', '1.13') && {
        insertWorkbook: 'This Excel cannot insert sheets: it needs Excel 2024, Microsoft 365 or the web.',
      }),
      ...(saving && {
        download: `${saving} does not let the pane save files. Open the summary as a new workbook and save it there, as a workbook or as PDF.`,
      }),
    },
    photos: workbookPhotos(excel),
    hasWorkbook: true,
    workbookName: () =>
      inExcel(excel, 'reading the workbook’s name', async (context) => {
        context.workbook.load('name')
        await context.sync()
        return context.workbook.name
      }),
    sheets: () => inExcel(excel, 'listing the sheets', listSheets),
    selectedReference: () =>
      inExcel(excel, 'reading the selection', async (context) => {
        const range = context.workbook.getSelectedRange()
        range.load('address')
        await context.sync()
        const { sheet = '', address } = splitReference(range.address)
        return joinReference(sheet, address)
      }),
    selection: () =>
      inExcel(excel, 'reading the selection', (context) =>
        readBlock(context, context.workbook.getSelectedRange()),
      ),
    read: (reference) =>
      inExcel(excel, `reading ${reference}`, async (context) =>
        readBlock(context, await locate(context, reference)),
      ),
    grid: (references) =>
      inExcel(excel, 'reading the cells', (context) =>
        readGrid(context, supported('ExcelApi', '1.13'), references),
      ),
    watch: sheetWatch(excel),
    mark: (marks) => {
      // One after the other: each removes what the one before has added.
      marking = marking.then(markNow(marks), markNow(marks))
      return marking
    },
    jump: (reference) =>
      inExcel(excel, `going to ${reference}`, async (context) => {
        const range = await locate(context, reference)
        if (splitReference(reference).sheet !== undefined) range.worksheet.activate()
        range.select()
        await context.sync()
      }),
    loadSettings: () =>
      inExcel(excel, 'reading the saved entries', (context) => readKept(context, SETTINGS_KEY)),
    saveSettings: (text) =>
      inExcel(excel, 'saving the entries', (context) => writeKept(context, SETTINGS_KEY, text)),
    insertWorkbook: (bytes, chart) => insertSheets(excel, supported, bytes, chart),
    openWorkbook: async (bytes) => {
      try {
        await excel.createWorkbook(toBase64(bytes))
      } catch (error) {
        throw hostError(error, 'opening a new workbook')
      }
    },
    download: async (bytes, fileName, type) => saveFile(bytes, fileName, type),
  }
}

async function listSheets(context: Excel.RequestContext) {
  const { worksheets } = context.workbook
  worksheets.load('items/name')
  await context.sync()
  const used = worksheets.items.map((sheet) => {
    const range = sheet.getUsedRangeOrNullObject(true)
    range.load('address')
    return range
  })
  await context.sync()
  return worksheets.items.map(({ name }, index) => {
    const range = used[index]
    return range && !range.isNullObject ? { name, used: splitReference(range.address).address } : { name }
  })
}
