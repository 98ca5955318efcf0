import type { BuildingRequest, BuildingResult, StagesRequest, StagesResult } from '@draughtbook/shared-calc'
import type { Layout } from '@draughtbook/shared-calc/log'
import type { LeftOut, ReadLines, ReadRecords, Register } from '@draughtbook/shared-calc/register'
import type { RerunReport, RerunTest } from '@draughtbook/shared-calc/rerun'

/** What is asked of the archive's worker. Each asking is answered by one message with the same number. */
export type Asked =
  | { kind: 'layout'; text: string }
  | { kind: 'read'; file: string; bytes: Uint8Array; layouts: readonly Layout[] }
  /** The records of a file, for a building or the stages of a site. */
  | { kind: 'records'; file: string; bytes: Uint8Array; layouts: readonly Layout[] }
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
  | ({ kind: 'make-building' } & BuildingOrder)
  | ({ kind: 'write-building' } & BuildingOrder)
  | ({ kind: 'make-stages' } & StagesOrder)
  | ({ kind: 'write-stages' } & StagesOrder)
  | { kind: 'write-register'; register: Register }
  | { kind: 'write-rerun'; report: RerunReport }

/** Tests of several homes, and how they are to be put together. */
export interface BuildingOrder {
  read: readonly ReadRecords[]
  wish: Pick<BuildingRequest, 'rule' | 'homesInBuilding' | 'sampleSize' | 'morePerMiss'> & { name?: string }
}

/** Tests of plots at several stages, and what each stage may use. */
export interface StagesOrder {
  read: readonly ReadRecords[]
  wish: Pick<StagesRequest, 'shares' | 'confidence'>
}

export interface Answers {
  layout: Layout
  read: ReadLines
  records: ReadRecords
  rerun: RerunTest[]
  'make-register': Register
  'make-rerun': RerunReport
  'make-building': BuildingResult
  'make-stages': StagesResult
  'write-building': Uint8Array
  'write-stages': Uint8Array
  'write-register': Uint8Array
  'write-rerun': Uint8Array
}

export type Answer = { number: number; value: Answers[keyof Answers] } | { number: number; fault: string }
