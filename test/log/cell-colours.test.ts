import { openLog } from '@draughtbook/shared-calc/log'
import ExcelJS from 'exceljs'
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { recalculate } from '../support/libreoffice'

type Colour = Partial<Record<'argb' | 'indexed' | 'theme' | 'tint', string | number>>

/**
 * Colours as spreadsheets offer them for the theme of 2007, tinted: place, tint, colour (values from memory; programs differ by one or
 * two in the last place).
 */
const TINTED = [
  [3, 0.7999, 'c6d9f0'],
  [3, 0.5999, '8db3e2'],
  [3, 0.3999, '548dd4'],
  [3, -0.2499, '17365d'],
  [3, -0.4999, '0f243e'],
  [4, 0.7999, 'dbe5f1'],
  [4, 0.3999, '95b3d7'],
  [4, -0.2499, '366092'],
  [4, -0.4999, '244061'],
  [5, 0.7999, 'f2dbdb'],
  [5, -0.2499, '943634'],
  [5, -0.4999, '632423'],
] as const

/** Colours as workbooks name them: by their figures, by the old palette, by the theme, lighter and darker. */
const COLOURS: Colour[] = [
  { argb: 'FFFFFF00' },
  { argb: 'FF1F4E78' },
  ...[2, 5, 10, 13, 22, 26, 36, 42, 47, 51, 53, 63].map((indexed) => ({ indexed })),
  ...[0, 1, 2, 3, 4, 5, 6, 7, 8, 9].flatMap((theme) =>
    [undefined, 0.4, 0.5999, 0.7999].map((tint) => ({ theme, ...(tint !== undefined && { tint }) })),
  ),
]

async function filled(colours: readonly Colour[] = COLOURS): Promise<Uint8Array> {
  const workbook = new ExcelJS.Workbook()
  const sheet = workbook.addWorksheet('Log')
  for (const [at, fgColor] of colours.entries()) {
    const cell = sheet.getCell(at + 1, 1)
    cell.value = at
    cell.fill = { type: 'pattern', pattern: 'solid', fgColor: fgColor as Partial<ExcelJS.Color> }
  }
  sheet.getCell('B1').value = 'not filled'
  sheet.getCell('B2').value = 'hatched'
  sheet.getCell('B2').fill = { type: 'pattern', pattern: 'lightUp', fgColor: { argb: 'FFFF0000' } }
  return new Uint8Array(await workbook.xlsx.writeBuffer())
}

const partsOf = (colour: string): number[] =>
  [0, 2, 4].map((at) => Number.parseInt(colour.slice(-6).slice(at, at + 2), 16))

describe('colours of cells', () => {
  it('are those LibreOffice shows, however the workbook names them', async () => {
    const bytes = await filled()
    const theirs = new ExcelJS.Workbook()
    await theirs.xlsx.load((await recalculate(bytes)) as unknown as ArrayBuffer)
    const sheet = openLog(bytes, 'log.xlsx').sheet('Log')
    let compared = 0
    for (const [row, colour] of COLOURS.entries()) {
      const fill = theirs.worksheets[0]?.getCell(row + 1, 1).fill
      const shown = fill?.type === 'pattern' ? (fill.fgColor?.argb ?? 'ffffff') : 'ffffff'
      const ours = sheet?.at(row, 0)?.fill ?? '#ffffff'
      // LibreOffice counts hue, lightness and saturation in whole degrees and hundredths.
      for (const [i, part] of partsOf(ours).entries())
        expect(
          Math.abs(part - (partsOf(shown)[i] ?? Number.NaN)),
          JSON.stringify([colour, ours, shown]),
        ).toBeLessThan(12)
      compared += 1
    }
    expect(compared).toBe(COLOURS.length)
  })

  it('are tinted as the palette of spreadsheets shows them', async () => {
    const bytes = await filled(TINTED.map(([theme, tint]) => ({ theme, tint })))
    const sheet = openLog(bytes, 'log.xlsx').sheet('Log')
    for (const [row, [theme, tint, shown]] of TINTED.entries())
      for (const [i, part] of partsOf(sheet?.at(row, 0)?.fill ?? '').entries())
        expect(Math.abs(part - (partsOf(shown)[i] ?? Number.NaN)), `${theme} ${tint}`).toBeLessThanOrEqual(2)
  })

  it('are none where a cell is white, hatched or not filled', async () => {
    const sheet = openLog(await filled(), 'log.xlsx').sheet('Log')
    expect(sheet?.at(0, 1)).not.toHaveProperty('fill')
    expect(sheet?.at(1, 1)).not.toHaveProperty('fill')
    // Place 0 of the theme, not tinted, is its light colour: white.
    const white = COLOURS.findIndex(({ theme, tint }) => theme === 0 && tint === undefined)
    expect(sheet?.at(white, 0)).not.toHaveProperty('fill')
  })

  it('are none, without an error, where the theme is missing or names none', async () => {
    const parts = unzipSync(await filled())
    const empty = strFromU8(parts['xl/theme/theme1.xml'] ?? new Uint8Array()).replace(
      /<a:clrScheme.*<\/a:clrScheme>/s,
      '<a:clrScheme name="x"/>',
    )
    const sheet = openLog(zipSync({ ...parts, 'xl/theme/theme1.xml': strToU8(empty) }), 'log.xlsx').sheet(
      'Log',
    )
    expect(sheet?.at(COLOURS.length - 1, 0)).not.toHaveProperty('fill')
    expect(sheet?.at(0, 0)?.fill).toBe('#ffff00')
  })
})
