import { readFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { parseRecord, type TestRecord } from '@draughtbook/shared-calc'
import { writeSummaryPdf } from '@draughtbook/shared-calc/pdf'
import { choosePictures, writeSummary } from '@draughtbook/shared-calc/workbook'
import ExcelJS from 'exceljs'
import { beforeAll, describe, expect, it } from 'vitest'
import { house } from '../site/support/house'
import { ofPdf } from '../support/pdf-text'
import { phonePhoto } from './support/made-photo'

// Sources, as far as public texts say them. P: passive house institute's public "Checklist: Test reports of airtightness
// measurements". S: Swiss directive on airtightness measurements 2022.1, as publicly restated. C: California Title 24, appendix
// NA5.5. I: ISO 9972:2015, clause on the test report, value from memory.
type Source = 'P' | 'S' | 'C' | 'I'

/** What is asked for, by whom, and what of the invented house must stand in the report for it. */
const asked: readonly (readonly [what: string, by: readonly Source[], shown: readonly RegExp[]])[] = [
  ['building and address', ['P', 'S', 'I'], [/Invented house, plot 7/, /7 Nowhere Lane/]],
  ['client', ['P', 'S', 'I'], [/^Client/m]],
  ['tester and organisation', ['P', 'S', 'I'], [/^Tester/m, /^Organisation/m]],
  ['date of the test', ['P', 'S', 'I'], [/\d+ [A-Z][a-z]+ 20\d\d/]],
  ['purpose, and stage of the work', ['S', 'I'], [/^Purpose/m, /^Stage/m]],
  ['standard', ['P', 'S', 'C', 'I'], [/ISO 9972:2015/]],
  ['preparation method', ['P', 'S', 'I'], [/method 1/]],
  ['every temporary seal', ['P', 'S', 'C', 'I'], [/Openings during the test/, /sealed/]],
  ['adjoining spaces', ['S', 'C'], [/[Aa]djoining spaces/]],
  ['internal volume and its basis', ['P', 'S', 'I'], [/[Ii]nternal volume/, /\bnet\b/]],
  ['envelope and floor area', ['P', 'S', 'I'], [/[Ee]nvelope area/, /[Ff]loor area/]],
  ['height', ['C', 'S'], [/[Bb]uilding height/]],
  [
    'gauge, with serial number and calibration',
    ['P', 'S', 'C', 'I'],
    [/Pressure gauge/, /serial number/, /calibration due/],
  ],
  ['fan, with serial number and calibration', ['P', 'S', 'C', 'I'], [/Flow device/]],
  ['accuracy of the instruments', ['S', 'I'], [/accuracy/]],
  ['thermometer', ['I'], [/Thermometer/]],
  ['temperatures', ['P', 'S', 'C', 'I'], [/[Ii]ndoor temperature/, /[Oo]utdoor temperature/]],
  ['wind', ['P', 'S', 'C', 'I'], [/[Ww]ind speed/]],
  ['barometric pressure', ['S', 'I'], [/[Bb]arometric pressure/]],
  [
    'zero-flow pressure before and after',
    ['P', 'S', 'C', 'I'],
    [/zero-flow pressure/, /\bbefore\b/, /\bafter\b/],
  ],
  ['every reading with its flow', ['P', 'S', 'C', 'I'], [/flow through/, /pressure\s+measured|measured, Pa/]],
  ['C_env, C_L, n with their intervals', ['P', 'S', 'I'], [/C_env/, /C_L/, /exponent n/, /95 % from/]],
  ['coefficient of determination', ['P', 'S'], [/r²/]],
  ['curve', ['P', 'S', 'I'], [/Leakage curve/]],
  ['q50, n50 and the related figures', ['P', 'S', 'I'], [/n50/, /q50/]],
  ['verdict against the limit', ['P', 'S'], [/MEETS|FAILS|NOT VALID/, /limit/]],
  ['leaks found', ['P', 'S'], [/Leaks found/]],
  ['photos', ['P', 'S'], [/IMG-0001\.jpg/]],
  ['signature', ['P', 'S', 'I'], [/Signature/]],
  // The record has no field for these: the report says so, and leaves room.
  ['where the fan stood', ['P', 'S', 'C'], [/by hand/, /Where the fan stood/]],
  ['temperatures after the test', ['P', 'S'], [/Temperatures after the test/]],
  ['exposure to wind', ['S', 'C'], [/Exposure of the building to wind/]],
  ['part of the building that was tested', ['S', 'I'], [/Part of the building that was tested/]],
]

const font = async (name: string) =>
  new Uint8Array(await readFile(createRequire(import.meta.url).resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`)))

const photographed = (): TestRecord => {
  const record = structuredClone(house)
  const [first] = record.leaks?.list ?? []
  if (!first) throw new Error('the house has no leaks')
  first.photo = 'IMG-0001.jpg'
  return parseRecord(record)
}

async function texts(workbook: Uint8Array): Promise<string> {
  const book = new ExcelJS.Workbook()
  await book.xlsx.load(workbook as never)
  const lines: string[] = []
  for (const name of ['Summary', 'Report'])
    book.getWorksheet(name)?.eachRow((row) =>
      row.eachCell((cell) => {
        if (!cell.isMerged || cell.master === cell) lines.push(String(cell.result ?? cell.value ?? ''))
      }),
    )
  return lines.join('\n')
}

describe('what certifying bodies ask of a test report', () => {
  let inCells: string
  let inPdf: string
  beforeAll(async () => {
    const record = photographed()
    const pictures = await choosePictures(record, { photos: new Map([['IMG-0001.jpg', phonePhoto(6)]]) })
    inCells = await texts((await writeSummary(record, { pictures })).bytes)
    const fonts = { regular: await font('DejaVuSansCondensed'), bold: await font('DejaVuSansCondensed-Bold') }
    inPdf = await ofPdf((await writeSummaryPdf(record, { pictures, fonts })).bytes)
  })

  it.each(asked)('%s (asked by %s): in the workbook and in the PDF', (_, by, shown) => {
    expect(by.length).toBeGreaterThan(0)
    for (const pattern of shown) {
      expect(inCells).toMatch(pattern)
      expect(inPdf).toMatch(pattern)
    }
  })
})

describe('a test of which little was logged', () => {
  it('says of each field asked for that it was not logged', async () => {
    const { building, test, conditions, runs } = house
    const bare = parseRecord({
      format: house.format,
      building: { name: building.name, volume_m3: building.volume_m3 },
      test: { date: test.date, method: test.method },
      conditions: {
        indoorTemperature_C: conditions.indoorTemperature_C,
        outdoorTemperature_C: conditions.outdoorTemperature_C,
      },
      runs,
    })
    const book = new ExcelJS.Workbook()
    await book.xlsx.load((await writeSummary(bare)).bytes as never)
    const missing: string[] = []
    book.getWorksheet('Report')?.eachRow((row) => {
      if (row.getCell(2).value === 'not logged') missing.push(row.getCell(1).text)
    })
    for (const label of ['Address', 'Client', 'Tester', 'Organisation', 'Purpose', 'Adjoining spaces'])
      expect(missing.some((one) => one.toLowerCase().startsWith(label.toLowerCase()))).toBe(true)
    for (const part of ['pressure gauge', 'flow device', 'thermometer', 'wind', 'barometric'])
      expect(missing.some((one) => one.toLowerCase().includes(part))).toBe(true)
  })
})
