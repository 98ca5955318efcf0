import { readFileSync } from 'node:fs'
import { parseRecord, type TestRecord } from '@draughtbook/shared-calc'
import { rerunFile } from '@draughtbook/shared-calc/rerun'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import { describe, expect, it } from 'vitest'
import { once } from '../../shared-calc/src/engine/once'
import { inventedRecord } from '../archive/invented-record'
import { house } from '../site/support/house'
import { savedByGnumeric } from '../support/gnumeric'
import { recalculate } from '../support/libreoffice'
import { asOfficeSaves } from './support/as-office-saves'
import { hiddenChanges } from './support/hidden-changes'
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

type Make = () => Promise<Uint8Array>

const written = once(() => writeSummaryWorkbook(demo()))
const byLibreOffice = once(async () => recalculate(await written()))
const byGnumeric = once(async () => savedByGnumeric(await written()))

/** As written, and as LibreOffice and Gnumeric have saved them. */
const summaries: readonly (readonly [string, Make, Make, Make])[] = [
  ['the demonstration', written, byLibreOffice, byGnumeric],
  ...(
    [
      ['one with an uncertainty budget', atTheLimit, { uncertainty: true }],
      ['one with take-off, plan, preparation and leaks', () => house, {}],
      ['one with odd texts', oddTexts, {}],
    ] as const
  ).map(([name, record, options]) => {
    const whole = once(() => writeSummaryWorkbook(record(), options))
    return [
      name,
      whole,
      async () => recalculate(await whole()),
      async () => savedByGnumeric(await whole()),
    ] as const
  }),
]

async function rerun(bytes: Uint8Array) {
  const [test] = await rerunFile(bytes, 'archived.xlsx')
  if (!test) throw new Error('no test came back')
  return { outcome: test.outcome, differences: test.differences.filter(({ rounding }) => !rounding) }
}

const agrees = { outcome: 'saved again', differences: [] }

describe('a summary that another program has saved again', () => {
  it.concurrent.each(summaries)(
    'agrees after LibreOffice has recalculated and saved it: %s',
    async (_, __, saved) => {
      expect(await rerun(await saved())).toEqual(agrees)
    },
    300_000,
  )

  it.each(summaries)(
    'agrees after Gnumeric has saved it: %s',
    async (_, __, ___, saved) => {
      expect(await rerun(await saved())).toEqual(agrees)
    },
    120_000,
  )

  it.each(summaries)(
    'agrees as the usual office program saves it, from a document library: %s',
    async (_, whole) => {
      const book = asOfficeSaves(new PackageText(await whole()))
      expect(await rerun(book.bytes)).toEqual(agrees)
    },
  )

  /** What was done before, and what must be said of it. */
  const before: readonly (readonly [string, RegExp])[] = [
    ['white text: verdict', /^text colour$/],
    ['number format, another figure shown: figure', /^displayed number$/],
    ['row 6 points high', /^height of row/],
    ['condition turned round', /^conditional format$/],
    ['text box over a figure', /^a text box or shape was added$/],
    ['chart of other cells', /cells of the vertical axis$/],
    ['print area', /^print area of sheet Summary$/],
    ['a name turned into a constant', /^defined name air_change_rate_50$/],
    ['formula turned into its own result', /^formula of /],
    ['window hidden', /^workbook: window$/],
    ['look of an issued condition struck through', /^conditional format$/],
    ['a message that shows when a cell is chosen', /data validation$/],
  ]
  it.each([
    // LibreOffice shows every window again.
    ['LibreOffice', recalculate, ['window hidden']],
    // Gnumeric keeps neither the message nor the window.
    ['Gnumeric', savedByGnumeric, ['window hidden', 'a message that shows when a cell is chosen']],
  ] as const)(
    'does not agree where it was tampered with before %s saved it',
    async (_, save, lost) => {
      const book = new PackageText(await written())
      const all = [...tamperingsOf(book), ...hiddenChanges(book)]
      for (const [wanted] of before) all.find(({ name }) => name === wanted)?.change(book)
      const { outcome, differences } = await rerun(await save(book.bytes))
      const labels = differences.map(({ label }) => label)
      const kept = before.filter(([name]) => !(lost as readonly string[]).includes(name))
      expect(kept.filter(([, said]) => !labels.some((label) => said.test(label)))).toEqual([])
      expect(outcome).toBe('differs')
    },
    120_000,
  )
})

describe('what is changed in a summary after a program has saved it', () => {
  it.each([
    ['LibreOffice', byLibreOffice],
    ['Gnumeric', byGnumeric],
  ] as const)(
    'a row of one line made three lines high: %s',
    async (_, saved) => {
      const row = /\d+$/.exec(landmarks(new PackageText(await written())).figure.address)?.[0]
      const book = new PackageText(await saved())
      book.edit(book.sheet('Summary'), new RegExp(`<row r="${row}"[^>]*>`), (found = '') =>
        found.replace(/ (?:ht|customHeight)="[^"]*"/g, '').replace('<row ', '<row ht="47" customHeight="1" '),
      )
      expect((await rerun(book.bytes)).differences).toMatchObject([
        { label: `height of row ${row}, points`, cell: `Summary!A${row}`, recorded: 47 },
      ])
    },
    120_000,
  )

  it('the lines between its cells, where the program keeps those of other sheets', async () => {
    const book = new PackageText(await byGnumeric())
    book.edit(book.sheet('Readings'), 'showGridLines="0"', 'showGridLines="1"')
    expect((await rerun(book.bytes)).differences).toMatchObject([
      { label: 'sheet Readings: lines between the cells' },
    ])
  }, 120_000)
})

describe('a summary whose formulas are stored once for several cells', () => {
  it('agrees', async () => {
    const saved = new PackageText(await byLibreOffice())
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
    const book = new PackageText(await written())
    change(book, landmarks(book).summary)
    expect(await rerun(book.bytes)).toEqual({ outcome: 'exactly as issued', differences: [] })
  })
})
