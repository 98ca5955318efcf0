import { readFileSync } from 'node:fs'
import { parseRecord } from '@draughtbook/shared-calc'
import { choosePictures, writeSummary, writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import { beforeAll, describe, expect, it } from 'vitest'
import { house } from '../site/support/house'
import { phonePhoto, placedPng } from '../workbook/support/made-photo'
import { asSavedByAnother, type HiddenChange } from './support/hidden-changes'
import { PackageText } from './support/package'
import { type ForCopies, forCopies, rerunOnce } from './support/rerun-once'
import { hiddenInArchives } from './support/tamper/archives'
import { otherDrawings } from './support/tamper/other-drawings'
import { otherLooks } from './support/tamper/other-looks'
import { hiddenInParts } from './support/tamper/parts'
import { hiddenInPictures } from './support/tamper/pictures'
import { unlisted } from './support/tamper/unlisted'
import { hiddenInViews } from './support/tamper/views-and-pages'

let whole: Uint8Array
let copies: ForCopies

beforeAll(async () => {
  whole = await writeSummaryWorkbook(
    parseRecord(JSON.parse(readFileSync('test/demo/demo-record.json', 'utf8'))),
  )
  copies = await forCopies()
})

const BAD = new Set<string>(['differs', 'inputs changed after issue', 'cannot be read'])

/** Names of the changes that a re-run does not find, with what it says instead. */
async function missedOf(
  from: Uint8Array,
  changes: readonly HiddenChange[],
  options: ForCopies,
): Promise<string[]> {
  const missed: string[] = []
  for (const { name, change, unseen } of changes) {
    const book = new PackageText(from)
    change(book)
    // Harder to find where no part is as issued. What is never seen is found by its part.
    const { outcome, why } = await rerunOnce(unseen ? book.bytes : asSavedByAnother(book).bytes, options)
    if (!BAD.has(outcome)) missed.push(`${name}: ${why}`)
  }
  return missed
}

describe('a summary that was tampered with where few would look is found out', () => {
  it.each([
    ['fonts, colours, grounds, number formats and conditional formats', otherLooks, 30],
    ['the chart and what lies over cells', otherDrawings, 20],
    ['parts, links between them, namespaces, alternatives and properties', hiddenInParts, 25],
    ['views, pages, texts, sheets', hiddenInViews, 25],
    ['what no summary holds: elements, attributes, cells given twice', unlisted, 40],
  ])(
    '%s',
    async (_, changes, count) => {
      const all = changes(new PackageText(whole))
      expect(await missedOf(whole, all, copies)).toEqual([])
      expect(all.length).toBeGreaterThan(count)
    },
    300_000,
  )

  it('photos and the logo', async () => {
    const photos = new Map([
      ['IMG-0001.jpg', phonePhoto(6)],
      ['set-up.png', placedPng()],
    ])
    const firm = { name: 'Sample Test Office (invented)', logo: placedPng() }
    const { bytes } = await writeSummary(house, { pictures: await choosePictures(house, { photos, firm }) })
    // Pictures come from each copy, so nothing is kept from one to the next.
    expect((await rerunOnce(bytes)).outcome).toBe('exactly as issued')
    const all = hiddenInPictures(new PackageText(bytes))
    expect(await missedOf(bytes, all, {})).toEqual([])
    expect(all.length).toBeGreaterThan(9)
  }, 300_000)

  it.each(hiddenInArchives().map(({ name, bytes }) => [name, bytes] as const))(
    'the archive: %s',
    async (_, bytes) => {
      const { outcome } = await rerunOnce(bytes(new PackageText(whole)), copies)
      expect(BAD.has(outcome)).toBe(true)
    },
  )
})
