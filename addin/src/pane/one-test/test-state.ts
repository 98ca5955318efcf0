import type { Evaluation } from '@draughtbook/shared-calc'
import type { LiveResult } from '../../calc/live.js'
import type { StepId } from '../../kept/kept-test.js'
import type { TestEntries } from './entries.js'

/** Where the figures on show come from. */
export type Origin =
  | { kind: 'none' }
  | { kind: 'local'; why: 'asking' | 'unreachable' | 'access' | 'refused'; words: string }
  | { kind: 'service'; difference?: string }

export interface TestState {
  entries: TestEntries
  result: LiveResult | undefined
  /** The evaluation on show: the service's where it has answered for these entries, else the pane's own. */
  evaluation: Evaluation | undefined
  origin: Origin
  /** The working is open, so the trace is asked for. */
  trace: boolean
  /** Something the host would not do. */
  fault: string | undefined
  saved: 'yes' | 'saving' | string
  /** Counts the tests opened: what a view shows of an earlier one goes. */
  opened: number
  /** The step on show. */
  step: StepId
  canUndo: boolean
  /** Whether the page itself is kept in this browser, or why not; undefined until that is known. */
  offline: 'yes' | string | undefined
  /** A newer build of the page was fetched; it is taken once no page of this one is open. */
  newer: boolean
  /** A field that somebody asked to be led to; a new object each time. */
  wanted: { path: string } | undefined
  /** Cells of findings are pointed out in the sheet. */
  marking: boolean
}

export interface StoreTimes {
  /** Quiet time before the entries are kept, ms: none on the page, whose tab may be killed at any moment. */
  keep_ms: number
  /** Quiet time before the service is asked, ms. */
  settle_ms: number
  /** Until an unreachable service is tried again, ms. */
  retry_ms: number
}
