import { readFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { writeSummaryPdf } from '@draughtbook/shared-calc/pdf'
import { rerunFile } from '@draughtbook/shared-calc/rerun'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import ExcelJS from 'exceljs'
import { describe, expect, it } from 'vitest'
import { type HouseOfLimits, housesOfLimits } from '../shared-calc/support/several-limits.js'
import { ofPdf } from '../support/pdf-text'

const font = async (name: string) =>
  new Uint8Array(await readFile(createRequire(import.meta.url).resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`)))
const fonts = async () => ({
  regular: await font('DejaVuSansCondensed'),
  bold: await font('DejaVuSansCondensed-Bold'),
})

/** One house for each family of targets, limit that decides, and outcome. */
const chosen = new Map<string, HouseOfLimits>()
for (const house of housesOfLimits) {
  const [family] = (house.record.target as { preset: string }).preset.split('-')
  const key = `${family}: ${house.decisive.quantity}, ${house.meets ? 'met' : 'missed'}`
  if (!chosen.has(key)) chosen.set(key, house)
}

const UNITS: Readonly<Record<string, string>> = {
  '1/h': '1/h',
  'm3/(h·m2)': 'm³/(h·m²)',
  'cm2/m2': 'cm²/m²',
}

describe('the summary of a target with several limits', () => {
  it.each([...chosen])('leads with the limit that decides: %s', async (_, house) => {
    const { record, decisive, value, meets } = house
    const workbook = await writeSummaryWorkbook(record)
    const book = new ExcelJS.Workbook()
    await book.xlsx.load(workbook as unknown as Parameters<typeof book.xlsx.load>[0])
    const banner = book.getWorksheet('Summary')?.getRow(12)
    const texts = [1, 2, 3, 4, 5, 6].map((column) => String(banner?.getCell(column).result ?? ''))
    expect(texts[0]).toBe(meets ? 'MEETS' : 'FAILS')
    const says = texts.find((text) => text.startsWith(`${decisive.quantity} `)) ?? ''
    const [, shown, unit, limit] = /^\S+ (\S+) (\S+)\s+limit (\S+)\s+margin/.exec(says) ?? []
    expect(unit).toBe(UNITS[decisive.unit])
    expect(Number(shown)).toBeCloseTo(value, 2)
    expect(Number(limit)).toBeCloseTo(decisive.limit, 9)
    const [rerun] = await rerunFile(new Uint8Array(workbook), 'house.xlsx')
    expect(rerun?.outcome).toBe('exactly as issued')
  })

  it('has it in the PDF too', async () => {
    const house = chosen.get('canada: aE10, missed') as HouseOfLimits
    const { bytes } = await writeSummaryPdf(house.record, { fonts: await fonts() })
    expect((await ofPdf(bytes)).replace(/\s+/g, ' ')).toContain(
      `aE10 ${house.value.toFixed(2)} cm²/m² limit ${house.decisive.limit} margin`,
    )
  })
})
