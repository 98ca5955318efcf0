import { HostError, type HostErrorCode } from '../host.js'

/** Excel's object model as office.js provides it; handed in, so that tests can run the same model in Node. */
export interface ExcelApi {
  run<T>(batch: (context: Excel.RequestContext) => Promise<T>): Promise<T>
  run<T>(context: Excel.RequestContext, batch: (context: Excel.RequestContext) => Promise<T>): Promise<T>
  createWorkbook(base64: string): Promise<void>
}

/** Asks at run time for what the manifest does not require (it requires ExcelApi 1.9). */
export type SetSupported = (set: string, version: string) => boolean

const KNOWN: Record<string, [HostErrorCode, string]> = {
  InvalidOperationInCellEditMode: [
    'busy',
    'Excel is waiting for a cell to be finished: press Enter or Esc there, then try again.',
  ],
  InvalidSelection: [
    'several-areas',
    'Select one block of cells: several blocks, a chart or a picture cannot be read.',
  ],
  ItemNotFound: ['not-found', 'That sheet or range is no longer in this workbook.'],
  InvalidReference: ['not-found', 'That sheet or range is no longer in this workbook.'],
  RequestPayloadSizeLimitExceeded: [
    'too-large',
    'Excel cannot pass on that many cells at once. Select fewer.',
  ],
  ResponsePayloadSizeLimitExceeded: [
    'too-large',
    'Excel cannot pass on that many cells at once. Select fewer.',
  ],
  AccessDenied: ['failed', 'Excel refused: the sheet or workbook is protected.'],
}

/** Runs a batch in Excel; every fault becomes a {@link HostError} in words for the user. */
export async function inExcel<T>(
  excel: ExcelApi,
  what: string,
  batch: (context: Excel.RequestContext) => Promise<T>,
): Promise<T> {
  try {
    return await excel.run(batch)
  } catch (error) {
    throw hostError(error, what)
  }
}

/** @param what what was being done, as in `reading Log!B4:B12` */
export function hostError(error: unknown, what: string): HostError {
  if (error instanceof HostError) return error
  const { code, message } = asFault(error)
  const [known, words] = KNOWN[code] ?? [
    'failed',
    `Excel could not finish ${what} (${code || 'no code'}: ${message})`,
  ]
  return new HostError(known, words, { cause: error })
}

function asFault(error: unknown): { code: string; message: string } {
  if (typeof error !== 'object' || error === null) return { code: '', message: String(error) }
  const { code, message } = error as { code?: unknown; message?: unknown }
  return { code: typeof code === 'string' ? code : '', message: typeof message === 'string' ? message : '' }
}
