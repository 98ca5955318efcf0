import type { Layout } from '@draughtbook/shared-calc/log'
import type { LeftOut, ReadLines, Register } from '@draughtbook/shared-calc/register'
import type { RerunReport, RerunTest } from '@draughtbook/shared-calc/rerun'

/** What is asked of the archive's worker. Each asking is answered by one message with the same number. */
export type Asked =
  | { kind: 'layout'; text: string }
  | { kind: 'read'; file: string; bytes: Uint8Array; layouts: readonly Layout[] }
  | {
      kind: 'rerun'
      file: string
      bytes: Uint8Array
      layouts: readonly Layout[]
      /** Public keys, PEM, that signatures are checked against. */
      keys?: readonly string[]
    }
  | {
      kind: 'make-register'
      read: readonly ReadLines[]
      others: readonly LeftOut[]
      asOf: string
      month?: string
    }
  | { kind: 'make-rerun'; tests: readonly RerunTest[]; asOf: string }
  | { kind: 'write-register'; register: Register }
  | { kind: 'write-rerun'; report: RerunReport }

export interface Answers {
  layout: Layout
  read: ReadLines
  rerun: RerunTest[]
  'make-register': Register
  'make-rerun': RerunReport
  'write-register': Uint8Array
  'write-rerun': Uint8Array
}

export type Answer = { number: number; value: Answers[keyof Answers] } | { number: number; fault: string }
