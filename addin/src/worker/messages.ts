import type { Finding, PlanRequest, Problem, TestRecord } from '@draughtbook/shared-calc'
import type { OpenedBook } from '../host/cell-sheet.js'
import type { InsertedChart } from '../host/host.js'
import type { CellPatch } from '../patch/patch-workbook.js'
import type { FirmsHead } from '../service/firms-head.js'
import type { SeriesJob, SeriesShown } from './read-series.js'

/** What a summary is written from, whatever kind of file it becomes. */
export interface ReportParts {
  record: TestRecord
  /** Field path → cell, for the findings in the file. */
  cells: Readonly<Record<string, string>>
  /** What reading the log had to convert or leave out. */
  findings: readonly Finding[]
  /** File name → JPEG: those that leaks name, and those of the set-up. */
  photos?: ReadonlyMap<string, Uint8Array>
  /** For the head of the page. */
  firm?: FirmsHead
}

/** Work done off the main thread: desktop Excel restarts an add-in that does not answer for five seconds. */
export type Job =
  /** Fetches the code of the other jobs, so that they work when the service cannot be reached later. */
  | { kind: 'warm' }
  | { kind: 'open'; bytes: Uint8Array; fileName: string }
  /** A raw gauge series to be read and drawn. */
  | SeriesJob
  /** A log with cells changed. */
  | { kind: 'patch'; bytes: Uint8Array; patches: readonly CellPatch[] }
  /** The same for a text file; numbers are written with its decimal sign. */
  | { kind: 'patch-text'; bytes: Uint8Array; patches: readonly CellPatch[]; decimal: '.' | ',' }
  /** The same for an OpenDocument spreadsheet. */
  | { kind: 'patch-spreadsheet'; bytes: Uint8Array; patches: readonly CellPatch[] }
  /** An empty log to fill in. */
  | { kind: 'template'; method: string; readings: number }
  /** The plan as a sheet for the site. */
  | { kind: 'plan'; request: PlanRequest }
  | ({
      kind: 'summary'
      /** Names of the sheets of the workbook it will be inserted into; left out for a file of its own. */
      insertBeside?: readonly string[]
    } & ReportParts)
  /** Summary and test report as a PDF. */
  | ({ kind: 'pdf' } & ReportParts)

export type Done =
  | { kind: 'plan-written'; bytes: Uint8Array }
  | { kind: 'patched'; bytes: Uint8Array; left: { cell: string; why: string }[] }
  | { kind: 'template-written'; bytes: Uint8Array }
  | { kind: 'opened'; book: OpenedBook }
  | { kind: 'series-read'; series: SeriesShown }
  | { kind: 'written'; bytes: Uint8Array; chart: InsertedChart }
  /** `lacking`: characters that the fonts cannot draw. */
  | { kind: 'pdf-written'; bytes: Uint8Array; lacking: readonly string[] }
  | { kind: 'warmed' }
  | { kind: 'failed'; problems: Problem[] }
