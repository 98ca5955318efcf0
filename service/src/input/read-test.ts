import type { CellMap, Finding, TestRecord } from '@draughtbook/shared-calc'

/** One test as read: its record, where its fields stood, and what reading it had to convert or leave out. */
export interface ReadTest {
  readonly record: TestRecord
  readonly cells: CellMap
  readonly findings: readonly Finding[]
}
