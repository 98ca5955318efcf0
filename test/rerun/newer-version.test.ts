import { CALCULATION_VERSION } from '@draughtbook/shared-calc'
import { writeBuildingWorkbook } from '@draughtbook/shared-calc/building'
import { namedByPart, readRecords } from '@draughtbook/shared-calc/register'
import { makeRerunReport, rerunFile, writeRerunWorkbook } from '@draughtbook/shared-calc/rerun'
import { writeStagesWorkbook } from '@draughtbook/shared-calc/stages'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import { strFromU8, strToU8 } from 'fflate'
import { beforeAll, describe, expect, it } from 'vitest'
import { inventedRecord } from '../archive/invented-record'
import { PackageText } from './support/package'

const NEWER = '99.1.0'

/** A workbook as a later version would have written it: only the number is known of that version. */
function by(version: string, bytes: Uint8Array): Uint8Array {
  const book = new PackageText(bytes)
  for (const [path, part] of Object.entries(book.parts))
    if (path.endsWith('.xml'))
      book.parts[path] = strToU8(strFromU8(part).replaceAll(CALCULATION_VERSION, version))
  return book.bytes
}

const made: Record<string, Uint8Array> = {}
beforeAll(async () => {
  const dates = { fabric: '2026-03-02', acceptance: '2026-07-02' }
  for (const [stage, date] of Object.entries(dates)) {
    const record = inventedRecord(1, { n50: 0.4, plot: 'Flat 1', site: 'Invented Court', date, volume: 300 })
    made[stage] = await writeSummaryWorkbook({
      ...record,
      test: { ...record.test, stage: stage as 'fabric' },
      target: { quantity: 'n50', limit: 0.6, referencePressure_Pa: 50, directions: 'mean' },
    })
  }
  const tests = Object.keys(dates).map((stage) => [`${stage}.xlsx`, made[stage] as Uint8Array] as const)
  const homes = tests.flatMap(([file, bytes]) => readRecords(bytes, file).records.map(namedByPart))
  const rerun = (await Promise.all(tests.map(([file, bytes]) => rerunFile(bytes, file)))).flat()
  made.building = await writeBuildingWorkbook({ name: 'Invented Court', homes })
  made.stages = await writeStagesWorkbook({ tests: homes })
  made.again = await writeRerunWorkbook(await makeRerunReport(rerun, '2026-11-27'))
})

const files = ['fabric', 'acceptance', 'building', 'stages', 'again']
const rerunAll = async (version: string) =>
  makeRerunReport(
    (
      await Promise.all(files.map((name) => rerunFile(by(version, made[name] as Uint8Array), `${name}.xlsx`)))
    ).flat(),
    '2026-11-27',
  )

describe('files of a calculation version that is not known', () => {
  it('newer than this one: each says which version to install', async () => {
    const { tests, passedOver } = await rerunAll(NEWER)
    expect(passedOver).toBeUndefined()
    expect(tests.map(({ file }) => file).sort()).toEqual(files.map((name) => `${name}.xlsx`).sort())
    for (const { outcome, why } of tests) {
      expect(outcome).toBe('cannot be read')
      expect(why).toBe(
        `it was made under calculation version 99.1.0, which is newer than this Draughtbook (${CALCULATION_VERSION}). Install a Draughtbook with calculation version 99.1.0 or later, then re-run the file`,
      )
    }
  })

  it.each(['1.2.9', '0.1.0', 'newest'])(
    'a number that was never issued, such as %s: the file is to be got again',
    async (odd) => {
      const [test] = await rerunFile(by(odd, made.fabric as Uint8Array), 'fabric.xlsx')
      expect(test?.outcome).toBe('cannot be read')
      expect(test?.why).toContain(`no calculation version ${odd} was ever issued`)
      expect(test?.why).toContain('Ask whoever issued it for the original')
      expect(test?.why).not.toContain('Install')
    },
  )

  it('a report whose number alone was raised is found out by its place', async () => {
    const names = ['fabric', 'acceptance']
    const tests = (
      await Promise.all(names.map((name) => rerunFile(made[name] as Uint8Array, `${name}.xlsx`)))
    ).flat()
    for (const name of ['building', 'stages', 'again']) {
      const own = await rerunFile(by(NEWER, made[name] as Uint8Array), 'report.xlsx')
      const report = await makeRerunReport([...tests, ...own], '2026-11-27')
      const entry = report.tests.find(({ file }) => file === 'report.xlsx')
      expect(entry?.outcome, name).toBe('differs')
      expect(entry?.differences.some(({ recorded }) => String(recorded).includes(NEWER))).toBe(true)
      expect(entry?.differences.every(({ cell }) => cell !== undefined)).toBe(true)
    }
  })

  // A re-run is made again only by its own version: one could be kept from that by an older number on it.
  it('a re-run that is said to be of an earlier version than its files is found out', async () => {
    const names = ['fabric', 'acceptance']
    const given = await Promise.all(names.map((name) => rerunFile(made[name] as Uint8Array, `${name}.xlsx`)))
    const own = await rerunFile(by('1.10.0', made.again as Uint8Array), 'again.xlsx')
    const { tests } = await makeRerunReport([...given.flat(), ...own], '2026-11-27')
    const entry = tests.find(({ file }) => file === 'again.xlsx')
    expect(entry?.outcome).toBe('differs')
    expect(entry?.differences.map(({ cell }) => cell)).toContain("'Sign-off'!B5")
  })
})
