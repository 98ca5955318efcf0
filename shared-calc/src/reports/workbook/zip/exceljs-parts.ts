import type { Workbook } from 'exceljs'
import { strToU8 } from 'fflate'
import type { Parts } from './parts.js'
import { type PreparedRow, rowsText } from './rows-text.js'

/** A sheet as exceljs prepares it for writing: styles and texts are numbered. */
interface PreparedSheet {
  readonly id: number
  rows: readonly PreparedRow[]
}

interface Model {
  readonly worksheets: readonly PreparedSheet[]
}

/** Takes a part in place of an archive. */
interface Sink {
  append(data: string | Uint8Array, options: { readonly name: string; readonly base64?: boolean }): void
}

type Step = (sink: Sink, model: Model) => Promise<void>

/** The steps by which exceljs 4 writes a workbook (lib/xlsx/xlsx.js, `write`); its types do not list them. */
interface Writer {
  prepareModel(model: Model, options: object): void
  readonly addContentTypes: Step
  readonly addOfficeRels: Step
  readonly addWorkbookRels: Step
  readonly addWorksheets: Step
  readonly addSharedStrings: Step
  readonly addThemes: Step
  readonly addStyles: Step
  readonly addApp: Step
  readonly addCore: Step
  readonly addWorkbook: Step
}

/**
 * The parts that exceljs writes, byte for byte, without packing and unpacking an archive, and with the rows written by `rowsText`:
 * both took more time than everything else of the file. For workbooks without tables, comments and pictures of exceljs' own.
 * @param finished - what becomes of a part's text before it is kept
 */
export async function exceljsParts(
  workbook: Workbook,
  finished: (path: string, text: string) => string = (_, text) => text,
): Promise<Parts> {
  const writer = workbook.xlsx as unknown as Writer
  const { model } = workbook as unknown as { model: Model }
  const parts: Parts = new Map()
  const sink: Sink = {
    append(data, { name }) {
      parts.set(name, typeof data === 'string' ? strToU8(finished(name, data)) : data)
    },
  }
  writer.prepareModel(model, {})
  await writer.addContentTypes(sink, model)
  await writer.addOfficeRels(sink, model)
  await writer.addWorkbookRels(sink, model)
  const rows = new Map(model.worksheets.map((sheet) => [`xl/worksheets/sheet${sheet.id}.xml`, sheet.rows]))
  for (const sheet of model.worksheets) sheet.rows = []
  await writer.addWorksheets(
    {
      append(data, options) {
        const own = rows.get(options.name)
        sink.append(own ? String(data).replace(EMPTY, () => rowsText(own)) : data, options)
      },
    },
    model,
  )
  await writer.addSharedStrings(sink, model)
  await writer.addThemes(sink, model)
  await writer.addStyles(sink, model)
  await writer.addApp(sink, model)
  await writer.addCore(sink, model)
  await writer.addWorkbook(sink, model)
  return parts
}

const EMPTY = '<sheetData/>'
