import { readFileSync } from 'node:fs'
import { parseRecord, type TestRecord } from '@draughtbook/shared-calc'
import { rerunFile } from '@draughtbook/shared-calc/rerun'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import { describe, expect, it } from 'vitest'
import { inventedRecord } from '../archive/invented-record'
import { house } from '../site/support/house'
import { savedByGnumeric } from '../support/gnumeric'
import { recalculate } from '../support/libreoffice'
import { PackageText } from './support/package'
import { shareFormulas } from './support/share-formulas'
import { landmarks } from './support/tamper/landmarks'
import { tamperingsOf } from './support/tamperings'

const demo = () => parseRecord(JSON.parse(readFileSync('test/demo/demo-record.json', 'utf8')))

/** Texts of a kind that programs escape, cut or turn round when they save. */
const oddTexts = (): TestRecord => {
  const record = demo()
  record.building.name = '  House “7” & <co>_x0041_ '
  record.test.notes = 'one\rtwo\u0001\ufffe\ud800 — =1+1'
  record.test.client = "'quoted"
  return record
}

/** Just at the limit: the margin is next to nothing, the probability next to a half. */
const atTheLimit = (): TestRecord => {
  const record = inventedRecord(12)
  return {
    ...record,
    target: { quantity: 'n50', limit: 0.5, referencePressure_Pa: 50, directions: 'mean' },
  } as TestRecord
}

const records: readonly (readonly [string, () => TestRecord, object])[] = [
  ['the demonstration', demo, {}],
  ['one with an uncertainty budget', atTheLimit, { uncertainty: true }],
  ['one with take-off, plan, preparation and leaks', () => house, {}],
  ['one with odd texts', oddTexts, {}],
]

async function rerun(bytes: Uint8Array) {
  const [test] = await rerunFile(bytes, 'archived.xlsx')
  if (!test) throw new Error('no test came back')
  return { outcome: test.outcome, differences: test.differences.filter(({ rounding }) => !rounding) }
}

const agrees = { outcome: 'saved again', differences: [] }

describe('a summary that another program has saved again', () => {
  it.each(records)(
    'agrees after LibreOffice has recalculated and saved it: %s',
    async (_, record, options) => {
      expect(await rerun(await recalculate(await writeSummaryWorkbook(record(), options)))).toEqual(agrees)
    },
    120_000,
  )

  it.each(records)(
    'agrees after Gnumeric has saved it: %s',
    async (_, record, options) => {
      expect(await rerun(await savedByGnumeric(await writeSummaryWorkbook(record(), options)))).toEqual(
        agrees,
      )
    },
    120_000,
  )

  it.each([
    'white text: verdict',
    'number format, another figure shown: figure',
    'row 1 point high',
    'condition turned round',
    'text box over the verdict',
    'chart of other cells',
    'print area',
    'a name turned into a constant',
    'formula turned into its own result',
  ])(
    'does not agree where it was tampered with before: %s',
    async (wanted) => {
      const whole = await writeSummaryWorkbook(demo())
      const book = new PackageText(whole)
      tamperingsOf(book)
        .find(({ name }) => name === wanted)
        ?.change(book)
      for (const saved of [await recalculate(book.bytes), await savedByGnumeric(book.bytes)])
        expect((await rerun(saved)).outcome).toBe('differs')
    },
    180_000,
  )
})

describe('a summary whose formulas are stored once for several cells', () => {
  it('agrees', async () => {
    const saved = new PackageText(await recalculate(await writeSummaryWorkbook(demo())))
    const emptied = ['Working', 'Check'].flatMap((sheet) => shareFormulas(saved, sheet))
    expect(emptied.length).toBeGreaterThan(20)
    expect(await rerun(saved.bytes)).toEqual(agrees)
  }, 120_000)
})

describe('a summary that was only looked at', () => {
  it.each([
    [
      'zoomed',
      (b: PackageText, s: string) =>
        b.edit(s, '<sheetView ', '<sheetView zoomScale="140" zoomScaleNormal="140" '),
    ],
    ['scrolled', (b: PackageText, s: string) => b.edit(s, '<sheetView ', '<sheetView topLeftCell="A20" ')],
    [
      'another cell chosen',
      (b: PackageText, s: string) =>
        b.edit(
          s,
          /<sheetView([^>]*)\/>/,
          (_, rest = '') => `<sheetView${rest}><selection activeCell="C9" sqref="C9"/></sheetView>`,
        ),
    ],
    [
      'another sheet opened',
      (b: PackageText) =>
        b.edit('xl/workbook.xml', '<sheets>', '<bookViews><workbookView activeTab="2"/></bookViews><sheets>'),
    ],
  ])('is exactly as issued: %s', async (_, change) => {
    const book = new PackageText(await writeSummaryWorkbook(demo()))
    change(book, landmarks(book).summary)
    expect(await rerun(book.bytes)).toEqual({ outcome: 'exactly as issued', differences: [] })
  })
})
