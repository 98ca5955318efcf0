import type { Workbook } from 'exceljs'
import type { TestRecord } from '../contract/record/index.js'
import { once } from '../engine/once.js'
import { addIssuedRows, type IssuedRow } from '../reports/workbook/issued/add-issued-rows.js'
import { issuedRows } from '../reports/workbook/issued/issue.js'
import { digestParts, type IssuedParts } from '../reports/workbook/issued/issued-parts.js'
import { packSummary } from '../reports/workbook/issued/pack-summary.js'
import { picturesFromParts } from '../reports/workbook/pictures/picture-rows.js'
import type { Places } from '../reports/workbook/places.js'
import type { ReadSummary } from '../reports/workbook/read-summary.js'
import { RECORD } from '../reports/workbook/record-sheet.js'
import type { Parts } from '../reports/workbook/zip/parts.js'
import type { RunnableVersion } from '../versions/version.js'
import { readLook, type WorkbookLook } from './look/workbook-look.js'
import type { RunAgain } from './run-again.js'

/** A summary as its version issues it: cells, parts and their digests. */
export interface IssuedFile {
  readonly workbook: Workbook
  readonly places: Places
  readonly parts: Parts
  readonly digests: IssuedParts
  /** Worked out when it is first asked for. Throws LogError. */
  readonly look: () => WorkbookLook
}

/** Files as they were issued, kept from one re-run to the next by what they are made from. */
export type IssuedFiles = Map<string, Promise<IssuedFile>>

/** The same as `issueAgain`, from those kept where it is among them. Pictures come from the archived file, so one with pictures is not kept. */
export function keptOrIssued(kept: IssuedFiles | undefined, ...from: Issued): Promise<IssuedFile> {
  const [{ version }, record, { evaluation }, { issuedParts, signature, pictures }] = from
  if (!kept || pictures) return issueAgain(...from)
  const key = JSON.stringify([version, record, evaluation, issuedParts === undefined, signature])
  const issued = kept.get(key) ?? issueAgain(...from)
  kept.set(key, issued)
  return issued
}

type Issued = Parameters<typeof issueAgain>

/** Makes the summary of a record again, with the signature and the pictures that the archived one carries. */
export async function issueAgain(
  version: RunnableVersion,
  record: TestRecord,
  again: RunAgain,
  { issuedParts, signature, pictures }: ReadSummary,
  archived: Parts,
): Promise<IssuedFile> {
  const before = issuedParts === undefined && version.withoutPartDigests === true
  const laidOut = await version.layOutSummary(
    record,
    again,
    before ? signature : undefined,
    pictures && picturesFromParts(pictures, archived),
  )
  const parts = await (version.packSummary ?? packSummary)(laidOut, before ? 'as exceljs writes' : 'in order')
  const { workbook, places } = laidOut
  const look = once(() => readLook(parts))
  if (before) return { workbook, places, parts, digests: digestParts(parts), look }
  const digests = digestParts(parts)
  const rows = issuedRows(digests, signature)
  expectRows(workbook, rows, addIssuedRows(parts, rows))
  return { workbook, places, parts, digests, look }
}

/** The rows of digests as cells too, so that they are compared like all others. */
function expectRows(workbook: Workbook, rows: readonly IssuedRow[], first: number): void {
  const sheet = workbook.getWorksheet(RECORD)
  rows.forEach(([key, text], i) => {
    const row = sheet?.getRow(first + i)
    if (!row) return
    row.getCell(1).value = key
    row.getCell(2).value = text
  })
}
