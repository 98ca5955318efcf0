import { digestOf, pathText, type TestRecord } from '../contract/record/index.js'
import { addressOf } from '../log/grid/address.js'
import type { Grid } from '../log/grid/grid.js'
import { type Leaf, leavesOf } from '../reports/workbook/leaves.js'
import type { Places } from '../reports/workbook/places.js'
import type { ReadSummary } from '../reports/workbook/read-summary.js'
import type { RunnableVersion } from '../versions/version.js'
import { typedAgrees } from './agreement.js'
import type { Difference } from './report.js'

export type Field = Leaf['value']

/** The record as it was issued, and which of its fields the file holds otherwise on sheet Record. */
export interface IssuedRecord {
  readonly record: TestRecord
  readonly changed: readonly { readonly path: string; readonly issued: Field; readonly now: Field }[]
}

/**
 * The record on sheet Record where its digest fits and the recorded figures follow from it. Where not, the record that the sheet
 * of readings holds, if that has the digest written at issue or gives the recorded figures: then the fields that were changed
 * are known. Undefined where neither fits.
 * @param places - where the fields of the record stand on the sheets
 * @param gives - whether a record gives the recorded figures
 */
export function issuedRecord(
  summary: ReadSummary,
  grid: Grid,
  places: Places,
  gives: (record: TestRecord) => boolean,
): IssuedRecord | undefined {
  const { record, digests, evaluation } = summary
  const written = new Set([digests.record.written, evaluation.recordDigest])
  const fits = written.size === 1 && written.has(digests.record.found)
  if (fits && gives(record)) return { record, changed: [] }
  const changes = cellChanges(record, grid, places)
  if (changes.length === 0) return fits ? { record, changed: [] } : undefined
  const candidate = withFields(
    record,
    changes.map(({ keys, cell }) => ({ keys, value: cell })),
  )
  if (!written.has(digestOf(candidate)) && !gives(candidate))
    return fits ? { record, changed: [] } : undefined
  return {
    record: candidate,
    changed: changes.map(({ keys, value, cell }) => ({ path: pathText(keys), issued: cell, now: value })),
  }
}

/** Fields whose cell holds something else than sheet Record. */
function cellChanges(
  record: TestRecord,
  grid: Grid,
  places: Places,
): { keys: Leaf['keys']; value: Field; cell: Field }[] {
  return leavesOf(record).flatMap(({ keys, value }) => {
    const place = places.field(pathText(keys))
    if (!place || !grid.sheetNames.includes(place.sheet)) return []
    const cell = grid.sheet(place.sheet)?.at(place.row - 1, place.column - 1)?.value
    if (cell === undefined || typeof cell !== typeof value || cell === value) return []
    if (typeof cell === 'number' && typeof value === 'number' && typedAgrees(cell, value) !== 'differs')
      return []
    return [{ keys, value, cell }]
  })
}

/** A copy of a record with other values in some of its fields. */
export function withFields(
  record: TestRecord,
  fields: readonly { readonly keys: Leaf['keys']; readonly value: Field }[],
): TestRecord {
  const copy = JSON.parse(JSON.stringify(record)) as TestRecord
  for (const { keys, value } of fields) {
    let holder = copy as unknown as Record<string | number, unknown>
    for (const key of keys.slice(0, -1)) holder = holder[key] as Record<string | number, unknown>
    holder[keys.at(-1) ?? ''] = value
  }
  return copy
}

/** The cell of a field, as `Readings!B12`. */
export function fieldCell(places: Places, path: string): string | undefined {
  const place = places.field(path)
  return place && `${place.sheet}!${addressOf(place.row - 1, place.column - 1)}`
}

/** Digests that do not fit what they stand for, and digests that are missing. */
export function digestDifferences(
  { digests, evaluation, calculationVersion, issuedParts }: ReadSummary,
  version: RunnableVersion,
): Difference[] {
  const differences: Difference[] = []
  const differs = (label: string, recorded: string | null, expected: string): void => {
    if (recorded !== expected)
      differences.push({ kind: 'digest', label, cell: 'Record', recorded, expected, rounding: false })
  }
  differs('digest of the record', digests.record.written, digests.record.found)
  differs('digest of the evaluation', digests.evaluation.written, digests.evaluation.found)
  differs('digest of the record in the evaluation', evaluation.recordDigest, digests.record.found)
  differs('calculation version in the evaluation', evaluation.calculationVersion, calculationVersion)
  if (!issuedParts && !version.withoutPartDigests)
    differs('digests of the parts of the file', null, 'one line for each part')
  return differences
}
