import { methods, parseRecord, type TakeOff, type TestRecord } from '@draughtbook/shared-calc'
import { writeBuildingWorkbook } from '@draughtbook/shared-calc/building'
import { makeRegister, readLines, writeRegisterWorkbook } from '@draughtbook/shared-calc/register'
import { makeRerunReport, rerunFile, writeRerunWorkbook } from '@draughtbook/shared-calc/rerun'
import { writeStagesWorkbook } from '@draughtbook/shared-calc/stages'
import {
  choosePictures,
  writeLogTemplate,
  writePlanWorkbook,
  writeSummary,
  writeSummaryWorkbook,
  writeTakeOffWorkbook,
} from '@draughtbook/shared-calc/workbook'
import { once } from '../../../shared-calc/src/engine/once'
import { inventedMonth } from '../../archive/invented-month'
import { inventedRecord } from '../../archive/invented-record'
import { house } from '../../site/support/house'
import { planRequest } from '../../site/support/plan-request'
import { phonePhoto, placedPng } from './made-photo'

/** A name of everything a maker of workbooks gets wrong: control characters, marks of XML and formulas, other scripts, no end. */
export const ODD =
  `=1+1 "House" & <co>_x0041_ \u0001\ufffe\ud800 家 \r\n line two ${'very long invented name '.repeat(20)}`.trim()

/** The same test under a method, as far as that method needs other facts. */
function under(method: string): TestRecord {
  const record = inventedRecord(31)
  const { preparation: _, ...test } = record.test
  const { target: __, ...rest } = record
  return parseRecord({ ...rest, test: { ...test, method } })
}

const odd = (): TestRecord => {
  const record = structuredClone(house)
  record.building.name = ODD.slice(0, 200)
  record.building.address = ODD
  record.test.client = ODD
  record.test.tester = ODD
  record.test.organisation = ODD
  record.test.notes = ODD
  for (const leak of record.leaks?.list ?? []) leak.note = ODD
  const [first] = record.leaks?.list ?? []
  if (first) first.place = ODD.slice(0, 200)
  return parseRecord(record)
}

async function register(): Promise<Uint8Array> {
  const lines = []
  for (const [i, record] of inventedMonth(8).entries())
    lines.push(
      ...readLines(await writeSummaryWorkbook(record), `2026-10/${record.building.site}/${i + 1}.xlsx`).lines,
    )
  lines.push(...readLines(await writeSummaryWorkbook(odd()), 'C:\\tests\\odd & strange.xlsx').lines)
  return writeRegisterWorkbook(
    makeRegister(lines, [{ file: '2026-10/cut.xlsx', why: 'the file is incomplete or damaged' }], {
      asOf: '2026-10-31',
    }),
  )
}

async function rerun(): Promise<Uint8Array> {
  const whole = await writeSummaryWorkbook(inventedRecord(1))
  const tests = [
    ...(await rerunFile(whole, 'archive/2026/untouched.xlsx')),
    ...(await rerunFile(whole.slice(0, 9000), 'archive/2026/cut & strange.xlsx')),
  ]
  return writeRerunWorkbook(await makeRerunReport(tests, '2030-01-15'))
}

async function withPictures(): Promise<Uint8Array> {
  const photos = new Map([
    ['IMG-0001.jpg', phonePhoto(6)],
    ['set-up.png', placedPng()],
  ])
  const pictures = await choosePictures(house, { photos, firm: { name: ODD, logo: placedPng() } })
  return (await writeSummary(house, { pictures, uncertainty: true })).bytes
}

const LIMIT = { quantity: 'n50', limit: 0.6, referencePressure_Pa: 50, directions: 'mean' } as const

/** Homes of an invented building: one misses the limit, one has an odd name, two are tested in one direction. */
function homes(): TestRecord[] {
  return [0.45, 0.58, 0.71, 0.5, 0.39].map((n50, i) => {
    const record = inventedRecord(40 + i, {
      n50,
      plot: i === 4 ? ODD.slice(0, 120) : `Flat ${i + 1}`,
      site: 'Invented Court',
    })
    return parseRecord({ ...record, target: LIMIT })
  })
}

const building = (): Promise<Uint8Array> =>
  writeBuildingWorkbook({
    name: 'Invented Court',
    homes: homes().map((record, i) => ({ file: `2026-10/Invented Court/flat-${i + 1}.xlsx`, record })),
    rule: 'summed',
    homesInBuilding: 24,
    sampleSize: 7,
    morePerMiss: 2,
  })

const tests = [
  { plot: 'Plot 1', stage: 'fabric', n50: 0.31, date: '2026-03-02' },
  { plot: 'Plot 1', stage: 'after services', n50: 0.44, date: '2026-05-04' },
  { plot: 'Plot 1', stage: 'acceptance', n50: 0.52, date: '2026-07-06' },
  { plot: 'Plot 2', stage: 'fabric', n50: 0.55, date: '2026-03-03' },
  { plot: ODD.slice(0, 120), stage: 'fabric', n50: 0.41, date: '2026-03-04' },
] as const

const stages = (): Promise<Uint8Array> =>
  writeStagesWorkbook({
    tests: tests.map((wish, i) => ({
      file: `2026/Invented Lane/test-${i + 1}.xlsx`,
      record: parseRecord({ ...inventedRecord(60 + i, { ...wish, site: 'Invented Lane' }), target: LIMIT }),
    })),
  })

type Make = () => Promise<Uint8Array>

/** Every kind of workbook that there is, from invented data. */
export const everyKind = (
  [
    ...methods.map(({ id }) => [`summary, ${id}`, () => writeSummaryWorkbook(under(id))] as const),
    [
      'summary with an uncertainty budget',
      () => writeSummaryWorkbook(inventedRecord(12), { uncertainty: true }),
    ],
    ['summary with take-off, plan, leaks, photos and a logo', withPictures],
    ['summary with odd texts', () => writeSummaryWorkbook(odd())],
    ['plan', () => writePlanWorkbook(planRequest)],
    ['volume', () => writeTakeOffWorkbook({ takeOff: house.takeOff as TakeOff, name: house.building.name })],
    ['empty test log', () => writeLogTemplate({ method: 'iso-9972:2015', readings: 10 })],
    ['building of several homes', building],
    ['stages of a site', stages],
    ['register', register],
    ['re-run', rerun],
  ] as readonly (readonly [string, Make])[]
).map(([name, make]) => [name, once(make)] as const)
