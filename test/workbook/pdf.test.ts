import { readFile, writeFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { join } from 'node:path'
import { parseRecord, type TestRecord } from '@draughtbook/shared-calc'
import { writeSummaryPdf } from '@draughtbook/shared-calc/pdf'
import { choosePictures, writeSummary } from '@draughtbook/shared-calc/workbook'
import { beforeAll, describe, expect, it } from 'vitest'
import demo from '../demo/demo-record.json'
import { commandLine, folder } from '../service/support/command-line'
import { house } from '../site/support/house'
import { numbers, ofPdf, poppler, printedByLibreOffice } from '../support/pdf-text'
import { plainPhoto } from './support/made-photo'

const font = (name: string) =>
  readFile(createRequire(import.meta.url).resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`))
const fonts = async () => ({
  regular: new Uint8Array(await font('DejaVuSansCondensed')),
  bold: new Uint8Array(await font('DejaVuSansCondensed-Bold')),
})

describe('the PDF of summary and test report', () => {
  it.each<[string, TestRecord, boolean]>([
    ['the demonstration', parseRecord(demo), false],
    ['a house with leaks and an uncertainty budget', house, true],
  ])(
    'has the same numbers as the workbook, as LibreOffice calculates and prints it: %s',
    async (_, record, uncertainty) => {
      const { bytes: workbook, chart } = await writeSummary(record, { uncertainty })
      const { bytes, lacking } = await writeSummaryPdf(record, { uncertainty, fonts: await fonts() })
      expect(lacking).toEqual([])
      const shown = numbers(await ofPdf(bytes))
      expect(shown.length).toBeGreaterThan(250)
      const printed = numbers(await printedByLibreOffice(workbook))
      // LibreOffice leaves out the label at the upper end of an axis.
      printed.push(String(chart.yAxis.max))
      expect(shown).toEqual(printed.sort())
    },
    120_000,
  )

  it('has the demonstration on three full pages, the tester’s line at the end of the last', async () => {
    const { bytes } = await writeSummaryPdf(parseRecord(demo), { fonts: await fonts() })
    const info = await poppler('pdfinfo', bytes)
    expect(info).toMatch(/Pages:\s+3\b/)
    const pages = await Promise.all(
      ['1', '2', '3'].map((page) => poppler('pdftotext', bytes, '-f', page, '-l', page, '-layout')),
    )
    for (const page of pages)
      expect(page.split('\n').filter((line) => line.trim() !== '').length).toBeGreaterThan(30)
    expect(pages[2]).toMatch(/Tester\s+Signature\s+Date/)
  })

  describe('can be read by everybody', () => {
    let pdf: Uint8Array
    beforeAll(async () => {
      const pictures = await choosePictures(house, { photos: new Map([['door.jpg', plainPhoto()]]) })
      pdf = (await writeSummaryPdf(house, { fonts: await fonts(), pictures })).bytes
    })

    it('is tagged A4 with a title and says its language', async () => {
      const info = await poppler('pdfinfo', pdf)
      expect(info).toMatch(/Tagged:\s+yes/)
      expect(info).toMatch(/Page size:\s+595\.28 x 841\.89 pts \(A4\)/)
      expect(info).toMatch(/Title:\s+Airtightness test: Invented house, plot 7/)
      expect(Buffer.from(pdf).includes('/Lang (en-GB)')).toBe(true)
      expect(Buffer.from(pdf).includes('/DisplayDocTitle true')).toBe(true)
    })

    it('embeds every font, with what the characters mean', async () => {
      const [, , ...lines] = (await poppler('pdffonts', pdf)).trim().split('\n')
      expect(lines.length).toBeGreaterThanOrEqual(2)
      // Columns emb, sub, uni, then object and generation.
      for (const line of lines) expect(line).toMatch(/DejaVuSansCondensed.*\s+yes yes yes\s+\d+\s+\d+$/)
    })

    it('has headings, tables with heads, and a text for each figure', async () => {
      const tree = await poppler('pdfinfo', pdf, '-struct-text')
      expect(tree.match(/^\s*H1\b/gm)).toHaveLength(2)
      for (const heading of ['Verdict', 'Leakage curve', 'Findings', 'Instruments', 'Photos'])
        expect(tree).toMatch(new RegExp(`H2[^\\n]*\\n\\s*"${heading}"`))
      expect(tree).toMatch(/TH/)
      const cells = [...tree.matchAll(/^\s*(Table|TR|TH|TD)\b/gm)].map(([, type]) => type)
      expect(cells.filter((type) => type === 'Table').length).toBeGreaterThan(5)
      expect(
        Buffer.from(pdf)
          .toString('latin1')
          .match(/\/Alt \(/g),
      ).toHaveLength(2)
    })

    it('is the same to the byte when it is written again', async () => {
      const pictures = await choosePictures(house, { photos: new Map([['door.jpg', plainPhoto()]]) })
      const again = await writeSummaryPdf(house, { fonts: await fonts(), pictures })
      expect(Buffer.from(again.bytes).equals(Buffer.from(pdf))).toBe(true)
    })

    it('draws the curve as lines: its only picture is the photo', async () => {
      const images = (await poppler('pdfimages', pdf, '-list')).trim().split('\n').slice(2)
      expect(images).toHaveLength(1)
    })
  })

  it('names characters that its fonts cannot draw', async () => {
    const record = parseRecord({ ...demo, building: { ...demo.building, name: 'House 家' } })
    expect((await writeSummaryPdf(record, { fonts: await fonts() })).lacking).toEqual(['家'])
  })
})

describe('evaluate --pdf', () => {
  it('writes it beside the workbook, and replaces that of the same test only', async () => {
    const at = await folder()
    const file = join(at, 'test.json')
    await writeFile(file, JSON.stringify(demo))
    const { code, out } = await commandLine('evaluate', file, '--pdf')
    expect(code).toBe(0)
    expect(out).toMatch(/PDF\s+.*test-summary\.pdf/)
    const pdf = await readFile(join(at, 'test-summary.pdf'))
    expect(pdf.subarray(0, 5).toString()).toBe('%PDF-')
    expect((await commandLine('evaluate', file, '--pdf')).code).toBe(0)
    await writeFile(join(at, 'test-summary.pdf'), '%PDF-1.7 of somebody else')
    const { code: refused, err } = await commandLine('evaluate', file, '--pdf')
    expect(refused).toBe(2)
    expect(err.join('\n')).toMatch(/test-summary\.pdf already exists with other content/)
  })

  it('refuses a name that is no .pdf: it would be the input', async () => {
    const at = await folder()
    const file = join(at, 'test.json')
    await writeFile(file, JSON.stringify(demo))
    const { code, err } = await commandLine('evaluate', '--pdf', file, file)
    expect(code).toBe(2)
    expect(err.join('\n')).toMatch(/--pdf must name a \.pdf file/)
  })
})
