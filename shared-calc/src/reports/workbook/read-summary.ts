import { InputError } from '../../contract/problem.js'
import { digestOf, Evaluation, parseRecord, type TestRecord } from '../../contract/record/index.js'
import { openLog } from '../../log/open-log.js'
import { ISSUED_PART } from './issued/add-issued-rows.js'
import { type IssuedParts, partsOfLines } from './issued/issued-parts.js'
import { PICTURES, type PicturesDescription, parsePictures } from './pictures/picture-rows.js'
import { parseChunks, RECORD_SHEET_FORMAT, recordRows } from './record-sheet.js'
import { type RecordSignature, signatureOf } from './record-signature.js'

/** What a summary workbook holds as data. */
export interface ReadSummary {
  readonly record: TestRecord
  readonly evaluation: Evaluation
  readonly calculationVersion: string
  /** Digests of the workbook's parts as it was issued; undefined where it holds none. */
  readonly issuedParts?: IssuedParts
  /** The pictures it was issued with; undefined where it had none. */
  readonly pictures?: PicturesDescription
  /** Undefined where the workbook was not signed. */
  readonly signature?: RecordSignature
  /** Digests as written on the sheet, and as they are of what was found. */
  readonly digests: {
    readonly record: { readonly written: string; readonly found: string }
    readonly evaluation: { readonly written: string; readonly found: string }
  }
}

/**
 * Recovers the record and its evaluation from a summary workbook. Only sheet Record is unpacked, within the limits of
 * `LIMITS`: a hostile file ends in an error, not in the memory.
 * @throws LogError when the file cannot be opened, InputError when it is not one of ours, or its Record sheet is damaged
 */
export async function readSummaryWorkbook(bytes: Uint8Array): Promise<ReadSummary> {
  const rows = recordRows(openLog(bytes, 'summary.xlsx'))
  if (rows.size === 0) throw fault('the workbook has no sheet Record, so this is not a Draughtbook summary')
  return parseRecordRows(rows)
}

/** Rows of the Record sheet, key → texts of column B, to what they hold. */
export function parseRecordRows(rows: ReadonlyMap<string, readonly string[]>): ReadSummary {
  const one = (key: string): string => {
    const [text] = rows.get(key) ?? []
    if (text === undefined) throw fault(`sheet Record has no line "${key}"`)
    return text
  }
  if (one('sheet format') !== RECORD_SHEET_FORMAT)
    throw fault(
      `sheet Record has the format "${one('sheet format')}"; this version reads "${RECORD_SHEET_FORMAT}"`,
    )
  const rawRecord = json(rows.get('record') ?? [], 'record')
  const rawEvaluation = json(rows.get('evaluation') ?? [], 'evaluation')
  const evaluation = Evaluation.safeParse(rawEvaluation)
  parseRecord(rawRecord)
  if (!evaluation.success) throw fault('the evaluation on sheet Record is damaged')
  const signature = signatureOf(rows)
  const issuedParts = partsOfLines(rows.get(ISSUED_PART))
  const pictures = parsePictures(rows.get(PICTURES))
  return {
    // As they stand: checked, but with their fields in the order they were written in. The sheets follow that order.
    record: rawRecord as TestRecord,
    ...(issuedParts && { issuedParts }),
    ...(pictures && { pictures }),
    ...(signature && { signature }),
    evaluation: rawEvaluation as Evaluation,
    calculationVersion: one('calculation version'),
    digests: {
      record: { written: one('record digest'), found: digestOf(rawRecord) },
      evaluation: { written: one('evaluation digest'), found: digestOf(rawEvaluation) },
    },
  }
}

function json(chunks: readonly string[], what: string): unknown {
  try {
    return parseChunks(chunks)
  } catch {
    throw fault(`the ${what} on sheet Record is damaged`)
  }
}

const fault = (message: string): InputError => new InputError([{ path: '', message }])
