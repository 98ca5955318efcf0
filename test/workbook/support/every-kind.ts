import { methods, parseRecord, type TakeOff, type TestRecord } from '@draughtbook/shared-calc'
import { makeRegister, readLines, writeRegisterWorkbook } from '@draughtbook/shared-calc/register'
import { makeRerunReport, rerunFile, writeRerunWorkbook } from '@draughtbook/shared-calc/rerun'
import {
  choosePictures,
  writeLogTemplate,
  writePlanWorkbook,
  writeSummary,
  writeSummaryWorkbook,
  writeTakeOffWorkbook,
} from '@draughtbook/shared-calc/workbook'
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
    makeRegister(lines, [{ file: '2026-10/cut.xlsx', why: 'the file is cut short or damaged' }], {
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
  return writeRerunWorkbook(makeRerunReport(tests, '2030-01-15'))
}

async function withPictures(): Promise<Uint8Array> {
  const photos = new Map([
    ['IMG-0001.jpg', phonePhoto(6)],
    ['set-up.png', placedPng()],
  ])
  const pictures = await choosePictures(house, { photos, firm: { name: ODD, logo: placedPng() } })
  return (await writeSummary(house, { pictures, uncertainty: true })).bytes
}

/** Every kind of workbook that there is, from invented data. */
export const everyKind: readonly (readonly [string, () => Promise<Uint8Array>])[] = [
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
  ['register', register],
  ['re-run', rerun],
]
