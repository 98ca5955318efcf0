import { mkdir, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { TestRecord } from '@draughtbook/shared-calc'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import { inventedMonth } from './invented-month'

/** Writes an archive of `count` invented tests as summary workbooks, a folder for each site. Returns each with its path. */
export async function makeArchive(
  folder: string,
  count: number,
  seed = 1,
): Promise<{ path: string; record: TestRecord }[]> {
  const made: { path: string; record: TestRecord }[] = []
  for (const [i, record] of inventedMonth(count, seed).entries()) {
    const site = join(folder, record.building.site ?? 'no site')
    await mkdir(site, { recursive: true })
    const path = join(site, `${String(i + 1).padStart(4, '0')} ${record.building.name}.xlsx`)
    await writeFile(path, await writeSummaryWorkbook(record))
    made.push({ path, record })
  }
  return made
}
