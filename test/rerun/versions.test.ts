import { mkdir, rm, writeFile } from 'node:fs/promises'
import { CALCULATION_VERSION, evaluateWorked, parseRecord, type TestRecord } from '@draughtbook/shared-calc'
import {
  type RunnableVersion,
  rerunFile,
  runnable,
  type VersionParts,
  versions,
} from '@draughtbook/shared-calc/rerun'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { frozenBundle } from '../../shared-calc/freeze-version.mjs'
import { issue } from '../../shared-calc/src/reports/workbook/issued/issue'
import { packSummary } from '../../shared-calc/src/reports/workbook/issued/pack-summary'
import { writeParts } from '../../shared-calc/src/reports/workbook/zip/parts'
import { inventedRecord } from '../archive/invented-record'

const [latest] = versions.slice(-1)
if (!latest) throw new Error('there is no version')
const current = await runnable(latest)
const { layOutSummary } = current

const record = parseRecord(inventedRecord(5))

/** A made-up earlier version that took the volume for 2 % larger: every rate per volume came out lower. */
const earlier: RunnableVersion = {
  version: '0.9.0',
  changed: 'made up for this test',
  evaluateWorked: (given, options) => {
    const { evaluation } = evaluateWorked(given, options)
    const larger: TestRecord = structuredClone(given)
    larger.building.volume_m3 = (given.building.volume_m3 ?? 0) * 1.02
    const worked = evaluateWorked(larger, options)
    const { recordDigest } = evaluation
    return { ...worked, evaluation: { ...worked.evaluation, recordDigest, calculationVersion: '0.9.0' } }
  },
  layOutSummary,
}
const now: RunnableVersion = {
  version: CALCULATION_VERSION,
  changed: 'volume as logged',
  evaluateWorked,
  layOutSummary,
}

async function issued(version: RunnableVersion): Promise<Uint8Array> {
  const worked = version.evaluateWorked(record)
  const parts = await packSummary(await version.layOutSummary(record, worked))
  issue(parts, worked.evaluation)
  return writeParts(parts)
}

describe('a workbook made under an older calculation version', () => {
  it('agrees as issued, and what the current version gives instead is listed', async () => {
    const [test] = await rerunFile(await issued(earlier), 'old.xlsx', { versions: [earlier, now] })
    expect(test?.outcome).toBe('older calculation version')
    expect(test?.calculationVersion).toBe('0.9.0')
    expect(test?.differences).toEqual([])
    const n50 = test?.sinceIssue.find(({ label }) => label === 'result: n50')
    expect(Number(n50?.expected) / Number(n50?.recorded)).toBeCloseTo(1.02, 9)
    expect(test?.notes).toContain(`version ${CALCULATION_VERSION}: volume as logged`)
  })

  it('is told from one that was tampered with', async () => {
    const { Tamperer, withNumber } = await import('../archive/tamper')
    const book = new Tamperer(await issued(earlier))
    const cell = book.cells().find(({ sheet, xml }) => sheet === 'Summary' && /<f>.*<v>0\.\d/s.test(xml))
    if (!cell) throw new Error('no result to tamper with')
    const [test] = await rerunFile(book.with(cell, withNumber(cell, 0.2)), 'old.xlsx', {
      versions: [earlier, now],
    })
    expect(test?.outcome).toBe('differs')
  })

  it('cannot be read where its version is newer than all that are known', async () => {
    const [test] = await rerunFile(await issued(now), 'new.xlsx', { versions: [earlier] })
    expect(test?.outcome).toBe('cannot be read')
    expect(test?.why).toBe(
      `it was made under calculation version ${CALCULATION_VERSION}, which is newer than this Draughtbook (0.9.0). Install a Draughtbook with calculation version ${CALCULATION_VERSION} or later, then re-run the file`,
    )
  })
})

describe('freezing a version', () => {
  const folder = 'test/output/frozen'
  let frozen: VersionParts

  beforeAll(async () => {
    await mkdir(folder, { recursive: true })
    const file = `${folder}/version-${process.pid}.ts`
    await writeFile(file, await frozenBundle(CALCULATION_VERSION))
    frozen = (await import(/* @vite-ignore */ `${process.cwd()}/${file}`)) as VersionParts
  })
  afterAll(() => rm(folder, { recursive: true, force: true }))

  it('gives one file that evaluates as the current version does', () => {
    const { evaluation } = frozen.evaluateWorked(record)
    expect(evaluation).toEqual(evaluateWorked(record).evaluation)
  })

  it('gives one file that re-runs workbooks in every cell', async () => {
    const version = { version: CALCULATION_VERSION, changed: '', ...frozen }
    const [test] = await rerunFile(await issued(now), 'a.xlsx', { versions: [version] })
    expect(test?.outcome).toBe('exactly as issued')
  })
})

describe('the list of versions', () => {
  it('ends with the current one and names each once', () => {
    const names = versions.map(({ version }) => version)
    expect(names.at(-1)).toBe(CALCULATION_VERSION)
    expect(new Set(names).size).toBe(names.length)
  })
})
