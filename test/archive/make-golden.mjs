// Writes the golden workbooks anew from their records, with the built shared-calc: node test/archive/make-golden.mjs
// Only for a version that was not issued yet. Workbooks of an issued version are never written again.
import { readdir, readFile, writeFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import { parseRecord } from '@draughtbook/shared-calc'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'

const folder = fileURLToPath(new URL('./golden/', import.meta.url))
for (const name of await readdir(folder)) {
  if (!name.endsWith('.json')) continue
  const record = parseRecord(JSON.parse(await readFile(folder + name, 'utf8')))
  await writeFile(folder + name.replace(/json$/, 'xlsx'), await writeSummaryWorkbook(record))
}
