import { readFileSync } from 'node:fs'
import { parseRecord, type TestRecord } from '@draughtbook/shared-calc'

/** A whole invented house, from rooms to leaks, as a record@2. Demo data: no real building, firm or person. */
export const house: TestRecord = parseRecord(
  JSON.parse(readFileSync(new URL('../../demo/demo-house.json', import.meta.url), 'utf8')),
)
