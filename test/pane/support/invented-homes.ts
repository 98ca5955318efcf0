import type { TestRecord } from '@draughtbook/shared-calc'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import { inventedRecord } from '../../archive/invented-record.js'

/** Limit of n50 of the invented homes, 1/h. */
export const LIMIT = 0.6

/** An invented home of Invented Court. */
export function home(seed: number, n50: number, stage?: string): TestRecord {
  const record = inventedRecord(seed, { n50, plot: `Flat ${seed}`, site: 'Invented Court' })
  const { stage: _, ...withoutStage } = record.test
  return {
    ...record,
    format: 'draughtbook/record@3',
    test: { ...withoutStage, ...(stage && { stage }) },
    runs: record.runs.map((run) => ({ ...run, flowStatedAt: 'reference air' as const })),
    target: { quantity: 'n50', limit: LIMIT, referencePressure_Pa: 50, directions: 'mean' },
  } as TestRecord
}

/** A file as it is chosen in the page. */
export interface Chosen {
  name: string
  mimeType: string
  buffer: Buffer
}

export const workbook = async (name: string, record: TestRecord): Promise<Chosen> => ({
  name,
  mimeType: 'application/octet-stream',
  buffer: Buffer.from(await writeSummaryWorkbook(record)),
})

export const json = (name: string, record: TestRecord): Chosen => ({
  name,
  mimeType: 'application/json',
  buffer: Buffer.from(JSON.stringify(record)),
})
