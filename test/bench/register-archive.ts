import { mkdir, mkdtemp, readFile, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { parseRecord, type TestRecord } from '@draughtbook/shared-calc'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'

/** An invented record that differs from its neighbours in name, number, volume and day. */
export function numbered(base: TestRecord, i: number): TestRecord {
  const record = structuredClone(base)
  record.building.name = `Plot ${i}`
  record.building.volume_m3 = (base.building.volume_m3 ?? 300) * (1 + (i % 97) / 1000)
  record.test.id = `INV-${i}`
  record.test.date = `2026-10-${String(1 + (i % 28)).padStart(2, '0')}`
  return record
}

/** The golden record that the archives of the benches are made from. */
export async function baseRecord(): Promise<TestRecord> {
  return parseRecord(JSON.parse(await readFile('test/archive/golden/both directions.json', 'utf8')))
}

/** Writes so many summary workbooks into a temporary folder, a hundred to a folder. Returns it with their paths. */
export async function makeArchive(count: number): Promise<{ folder: string; paths: string[] }> {
  const folder = await mkdtemp(join(tmpdir(), 'draughtbook-bench-'))
  const base = await baseRecord()
  const paths: string[] = []
  for (let i = 0; i < count; i += 1) {
    const part = join(folder, String(Math.floor(i / 100)))
    if (i % 100 === 0) await mkdir(part)
    const path = join(part, `${i}.xlsx`)
    await writeFile(path, await writeSummaryWorkbook(numbered(base, i)))
    paths.push(path)
  }
  return { folder, paths }
}
