import { InputError } from '../../contract/problem.js'
import { problemsInWords, type TestRecord } from '../../contract/record/index.js'
import type { Layout } from '../../log/layout/schema.js'
import { ownReport } from '../../log/own-report.js'
import { readGrid } from '../../log/read-log.js'
import { archivedParts, layoutOf, NOT_A_SUMMARY, openArchived } from '../archive/open-archived.js'
import { alteration, type LeftOut, standingInTheWay } from './read-lines.js'

/** The record of one archived test. */
export interface ReadRecord {
  readonly file: string
  /** What tells several tests of one file apart; absent where there is one. */
  readonly part?: string
  readonly record: TestRecord
  /** Why the file cannot be taken as issued; absent where it can. */
  readonly altered?: string
}

export interface ReadRecords {
  readonly records: readonly ReadRecord[]
  readonly leftOut: readonly LeftOut[]
}

/** A test with the file it comes from, and which of the file's tests it is, in one name. */
export const namedByPart = ({ part, ...one }: ReadRecord): Omit<ReadRecord, 'part'> => ({
  ...one,
  file: part === undefined ? one.file : `${one.file} (${part})`,
})

/**
 * The records of the tests of one file: of a summary workbook, or of a log by one of the layouts. Never throws for a file that
 * cannot be read: it is left out, with the reason.
 */
export function readRecords(bytes: Uint8Array, file: string, layouts: readonly Layout[] = []): ReadRecords {
  try {
    const { grid, summary } = openArchived(bytes, file)
    if (summary) {
      const altered = alteration(summary, grid, () => archivedParts(bytes))
      return {
        records: [{ file, record: summary.record, ...(altered !== undefined && { altered }) }],
        leftOut: [],
      }
    }
    const own = ownReport(grid)
    if (own !== undefined)
      return { records: [], leftOut: [{ file, why: own, expected: true, kind: 'own report' }] }
    if (!layoutOf(grid, layouts)) return left(file, NOT_A_SUMMARY)
    const { tests } = readGrid(grid, { layouts })
    const records = tests.flatMap(({ record }, i) =>
      record ? [{ file, ...(tests.length > 1 && { part: `test ${i + 1}` }), record }] : [],
    )
    const faults = [...tests.flatMap((test) => (test.record ? [] : standingInTheWay(test)))]
    return {
      records,
      leftOut: faults.length > 0 ? [{ file, why: problemsInWords(faults) }] : [],
    }
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    return left(file, problemsInWords(error.problems))
  }
}

const left = (file: string, why: string): ReadRecords => ({ records: [], leftOut: [{ file, why }] })
