import { readFileSync } from 'node:fs'
import { parseRecord } from '@draughtbook/shared-calc'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import { beforeAll, describe, expect, it } from 'vitest'
import { asSavedByAnother } from './support/hidden-changes'
import { PackageText } from './support/package'
import { type ForCopies, forCopies, rerunOnce } from './support/rerun-once'
import { landmarks } from './support/tamper/landmarks'

let whole: Uint8Array
let copies: ForCopies
let figure: string

beforeAll(async () => {
  whole = await writeSummaryWorkbook(
    parseRecord(JSON.parse(readFileSync('test/demo/demo-record.json', 'utf8'))),
  )
  copies = await forCopies()
  figure = landmarks(new PackageText(whole)).figure.address
})

async function told(book: PackageText) {
  const { outcome, differences } = await rerunOnce(book.bytes, copies)
  return {
    outcome,
    told: differences
      .filter(({ rounding }) => !rounding)
      .map(({ label, cell, recorded, expected }) => [label, cell, recorded, expected]),
  }
}

// What was written into the font of one cell is what must be told of it.
describe('a property of a font that hardly shows is told with its cell', () => {
  it.each([
    ['half a point smaller', /<sz val="[^"]*"\/>/, '<sz val="9.5"/>', 'size 9.5', /^size \d+$/],
    ['letters set closer', '<sz', '<condense/><sz', 'condense', /^none$/],
    ['letters set wider', '<sz', '<extend/><sz', 'extend', /^none$/],
    ['another family of fonts', '</font>', '<family val="5"/></font>', 'family 5', /^none$/],
  ])('%s', async (_, from, to, now, issued) => {
    const book = new PackageText(whole)
    book.refont('Summary', figure, (font) => font.replace(from, to))
    const found = await told(book)
    expect(found.outcome).toBe('differs')
    expect(found.told).toEqual([
      ['font of the cell', `Summary!${figure}`, now, expect.stringMatching(issued)],
    ])
  })
})

describe('a workbook saved by a program that works nothing out, without results', () => {
  const RESULT = /(<f>[^<]*<\/f>)<v>[^<]*<\/v>/g
  const withoutResults = (book: PackageText) => {
    let count = 0
    for (const path of Object.keys(book.parts))
      if (/worksheets\/sheet\d+\.xml$/.test(path) && RESULT.test(book.text(path)))
        book.edit(path, RESULT, (_, formula = '') => {
          count += 1
          return formula
        })
    return count
  }

  it('is told in one line, not in one for each formula', async () => {
    const book = new PackageText(whole)
    const count = withoutResults(book)
    const found = await told(asSavedByAnother(book))
    expect(found.outcome).toBe('differs')
    expect(found.told).toEqual([
      ['results of formulas, which the program that saved the file left out', undefined, 'none', count],
    ])
  })

  it('beside which a formula that was changed, or typed over, is still told', async () => {
    const book = new PackageText(whole)
    withoutResults(book)
    book.edit(
      landmarks(new PackageText(whole)).summary,
      new RegExp(`(<c r="${figure}"[^>]*>)<f>[^<]*</f>`),
      (_, open = '') => `${open}<v>0.31</v>`,
    )
    const { told: lines } = await told(asSavedByAnother(book))
    expect(lines.filter(([, cell]) => cell === `Summary!${figure}`).length).toBe(2)
    expect(lines.length).toBe(3)
  })

  it('is not what one missing result is taken for', async () => {
    const book = new PackageText(whole)
    book.edit(
      landmarks(book).summary,
      new RegExp(`(<c r="${figure}"[^>]*><f>[^<]*</f>)<v>[^<]*</v>`),
      (_, formula = '') => formula,
    )
    const { told: lines } = await told(book)
    expect(lines.map(([, cell]) => cell)).toEqual([`Summary!${figure}`])
  })
})
