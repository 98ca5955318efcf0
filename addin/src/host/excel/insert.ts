import { HostError, type Inserted, type InsertedChart } from '../host.js'
import { addChart } from './chart.js'
import { type ExcelApi, hostError, inExcel, type SetSupported } from './excel-api.js'

/** Bytes as base64, as Excel takes a workbook. In pieces: an argument list has a length limit. */
export function toBase64(bytes: Uint8Array): string {
  let text = ''
  for (let start = 0; start < bytes.length; start += 0x8000)
    text += String.fromCharCode(...bytes.subarray(start, start + 0x8000))
  return btoa(text)
}

/**
 * Inserts a workbook's sheets behind those of the open one. Excel drops charts on the way, so the chart is drawn
 * again from the inserted cells. Known to fail in Excel on the web at times (OfficeDev/office-js issue 6142): then
 * the message offers the other two ways.
 */
export async function insertSheets(
  excel: ExcelApi,
  supported: SetSupported,
  bytes: Uint8Array,
  chart: InsertedChart | undefined,
): Promise<Inserted> {
  if (!supported('ExcelApi', '1.13'))
    throw new HostError(
      'unsupported',
      'This Excel cannot insert sheets (it lacks ExcelApi 1.13). Open the summary as a new workbook instead.',
    )
  const sheets = await inExcel(excel, 'inserting the summary', (context) => insertNames(context, bytes))
  if (!chart) return { sheets, chart: false, notes: [] }
  try {
    await inExcel(excel, 'drawing the chart', (context) => addChart(context, chart))
    return { sheets, chart: true, notes: [] }
  } catch (error) {
    const { message } = hostError(error, 'drawing the chart')
    return { sheets, chart: false, notes: [`The sheets were inserted, but the chart was not: ${message}`] }
  }
}

async function insertNames(context: Excel.RequestContext, bytes: Uint8Array): Promise<string[]> {
  let ids: OfficeExtension.ClientResult<string[]>
  try {
    ids = context.workbook.insertWorksheetsFromBase64(toBase64(bytes), { positionType: 'End' })
    await context.sync()
  } catch (error) {
    throw new HostError(
      'failed',
      'Excel did not insert the sheets, and nothing was changed. Open the summary as a new workbook, or download it.',
      { cause: error },
    )
  }
  const inserted = ids.value.map((id) => context.workbook.worksheets.getItem(id))
  for (const sheet of inserted) sheet.load('name')
  await context.sync()
  return inserted.map((sheet) => sheet.name)
}
