import { readFileSync } from 'node:fs'
import { parseRecord } from '@draughtbook/shared-calc'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import { beforeAll, describe, expect, it } from 'vitest'
import { asSavedByAnother, type HiddenChange, hiddenChanges } from './support/hidden-changes'
import { PackageText } from './support/package'
import { type ForCopies, forCopies, rerunOnce } from './support/rerun-once'
import { tamperingsOf } from './support/tamperings'

let whole: Uint8Array
let copies: ForCopies

beforeAll(async () => {
  whole = await writeSummaryWorkbook(
    parseRecord(JSON.parse(readFileSync('test/demo/demo-record.json', 'utf8'))),
  )
  copies = await forCopies()
})

/** Parts of a file that another program may leave out, add or write otherwise, with nothing to be seen of it. */
const NEVER_SEEN = new Set([
  'number format, another figure shown: verdict',
  'number format, less digits: verdict',
  'number format, scaled by a thousand: verdict',
  'number format, as a percentage: verdict',
  'number format, a digit put before: verdict',
  'number format, text as another verdict: verdict',
  // Sections for texts in the format of a number, and for numbers in that of a text.
  'number format, text as another verdict: figure',
  // The axis shows no numbers.
  'number format of an axis',
  'iterative calculation',
  'date of saving',
  'saved by',
  // No cell takes its colour or font from there.
  'theme colours',
  'theme fonts',
  'borders',
  'protection of cells',
  'a part nobody knows',
  'a text no cell shows',
  'extension of a sheet',
])

describe('a summary that was tampered with', () => {
  it('is found out, whatever was done to what is seen of it', async () => {
    const missed: string[] = []
    const unnamed: string[] = []
    const changes: HiddenChange[] = [
      ...tamperingsOf(new PackageText(whole)),
      ...hiddenChanges(new PackageText(whole)),
    ]
    for (const { name, change, unseen } of changes) {
      const book = new PackageText(whole)
      change(book)
      // Harder to find where no part is as issued: then only what is seen is compared. The rest is found by the parts.
      const bytes = unseen || NEVER_SEEN.has(name) ? book.bytes : asSavedByAnother(book).bytes
      const { outcome, differences, why } = await rerunOnce(bytes, copies)
      if (!BAD.has(outcome)) missed.push(`${name}: ${why}`)
      else if (outcome !== 'cannot be read' && differences.every(({ rounding }) => rounding))
        unnamed.push(name)
    }
    expect(missed).toEqual([])
    expect(unnamed).toEqual([])
    expect(changes.length).toBeGreaterThanOrEqual(200)
  }, 1_200_000)

  it('is told from one that another program has only saved', async () => {
    const untouched = await rerunOnce(asSavedByAnother(new PackageText(whole)).bytes, copies)
    expect(untouched).toMatchObject({ outcome: 'saved again', differences: [] })
  })

  it.each([
    'rows that cannot be scrolled to above frozen ones',
    'window hidden',
    'tabs of the sheets hidden',
    'rows of digests with a look of their own',
    'two digests of parts swapped',
    'colour of the text set by the number format',
    'stored values of the chart',
    'poisoned result in the fourth digit',
    'print area',
    'another workbook part',
  ])('is found out where every other part is as issued: %s', async (wanted) => {
    const book = new PackageText(whole)
    const found = [...tamperingsOf(book), ...hiddenChanges(book)].find(({ name }) => name === wanted)
    found?.change(book)
    const { outcome, differences } = await rerunOnce(book.bytes, copies)
    expect(BAD.has(outcome)).toBe(true)
    expect(differences.some(({ rounding }) => !rounding)).toBe(true)
  })
})

const BAD = new Set<string>(['differs', 'inputs changed after issue', 'cannot be read'])

describe('a file of which only the view was changed', () => {
  const views: readonly (readonly [string, (b: PackageText) => unknown])[] = [
    [
      'a larger window, another sheet opened, tabs scrolled',
      (b) =>
        b.edit(
          'xl/workbook.xml',
          '<sheets>',
          '<bookViews><workbookView xWindow="120" yWindow="80" windowWidth="28800" windowHeight="15000" tabRatio="700" firstSheet="1" activeTab="3"/></bookViews><sheets>',
        ),
    ],
    [
      'every sheet zoomed and scrolled, another cell chosen',
      (b) => {
        for (const name of ['Summary', 'Report', 'Readings', 'Check', 'Record'])
          b.edit(
            b.sheet(name),
            /<sheetView([^>]*)\/>/,
            (_, rest = '') =>
              `<sheetView${rest} tabSelected="1" zoomScale="85" zoomScaleNormal="85" topLeftCell="A7"><selection activeCell="B9" sqref="B9:C12"/></sheetView>`,
          )
      },
    ],
    [
      'shown as pages, and as pages with their breaks',
      (b) => {
        for (const [name, view] of [
          ['Summary', 'pageLayout'],
          ['Report', 'pageBreakPreview'],
        ] as const)
          b.edit(
            b.sheet(name),
            '<sheetView ',
            `<sheetView view="${view}" zoomScalePageLayoutView="90" zoomScaleSheetLayoutView="60" `,
          )
      },
    ],
    [
      'frozen rows stay, the rest is scrolled',
      (b) => b.edit(b.sheet('Working'), 'topLeftCell="A4"', 'topLeftCell="A300"'),
    ],
  ]
  it.each(views)('is exactly as issued: %s', async (_, change) => {
    const book = new PackageText(whole)
    change(book)
    const { outcome, differences } = await rerunOnce(book.bytes, copies)
    expect([outcome, differences]).toEqual(['exactly as issued', []])
  })
})
