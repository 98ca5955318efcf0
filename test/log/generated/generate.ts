import { inventHouse, PLATES } from './house.js'
import { putRooms, titlePage } from './parts/extras.js'
import { type Random, randomFrom } from './random.js'
import type { Recipe } from './recipe.js'
import { type KnownTest, STRUCTURES } from './structures/index.js'
import { type TestTruth, truthOfTest } from './truth/of-test.js'
import { Sheet } from './write/sheet.js'
import { writeText } from './write/text.js'
import { writeWorkbook } from './write/workbook.js'
import { type WrittenTest, writeDown } from './written.js'

export interface GeneratedLog {
  name: string
  recipe: Recipe
  fileName: string
  /** `tune`: may be looked at while the reader is written. `held out`: only its score may be known. */
  half: 'tune' | 'held out'
  sheets: readonly Sheet[]
  write(): Promise<Uint8Array>
  tests: readonly TestTruth[]
  /** The figures as they were written down, for tests that change what they mean. */
  written: readonly WrittenTest[]
}

const PLACES = ['Teasel Cottage', 'Plot 12, Dovecote Rise', 'Harrow House', 'Quarry Barn', 'Linden Row 5']

/** A log with its truth. The name is the seed: another name, another house. */
export function generate(recipe: Recipe): GeneratedLog {
  const random = randomFrom(hash(recipe.name))
  const tests = inventTests(recipe, random)
  const sheets = STRUCTURES[recipe.structure](tests, recipe, random)
  const first = tests[0]
  if (!first) throw new Error('a log holds a test')
  if (recipe.table.includes('plate')) sheets.push(plateSheet())
  if (recipe.dirt.includes('rooms on a sheet')) {
    const rooms = new Sheet('Rooms')
    putRooms(rooms, 1, 1, first.written, recipe)
    sheets.unshift(rooms)
  }
  if (recipe.dirt.includes('title page')) sheets.unshift(titlePage(first.written, recipe))
  if (recipe.dirt.includes('old job hidden')) sheets.push(oldJob(recipe, random))
  const extension = { xlsx: 'xlsx', semicolon: 'csv', comma: 'csv', tab: 'txt' }[recipe.file]
  return {
    name: recipe.name,
    recipe,
    fileName: `${recipe.name.replaceAll(/[^\p{L}\d]+/gu, '-')}.${extension}`,
    half: hash(`half of ${recipe.name}`) % 2 === 0 ? 'tune' : 'held out',
    sheets,
    write: () => writeSheets(sheets, recipe),
    // What a filter hides does not count.
    tests: tests
      .slice(0, recipe.tests === 'houses, others filtered out' ? 1 : undefined)
      .map(({ truth }) => truth),
    written: tests.map(({ written }) => written),
  }
}

/** The sheets in the recipe's file format; also for sheets that a test has changed. */
export async function writeSheets(sheets: readonly Sheet[], { file, words }: Recipe): Promise<Uint8Array> {
  if (file === 'xlsx') return writeWorkbook(sheets)
  const separator = { semicolon: ';', comma: ',', tab: '\t' }[file]
  const decimal = words.decimalComma && file !== 'comma' ? ',' : '.'
  return writeText(sheets[0] as Sheet, separator, decimal, file === 'semicolon')
}

function inventTests(recipe: Recipe, random: Random): KnownTest[] {
  const count = recipe.tests === 'one' ? 1 : 2
  const tests: KnownTest[] = []
  for (let index = 0; index < count; index++) {
    const again = recipe.tests === 'retest' && index > 0
    const date = {
      year: 2026,
      month: random.whole(3, 9),
      day: recipe.date === 'day or month first' ? 5 : random.whole(14, 27),
    }
    const house = inventHouse(random, {
      zeroFlowValues: ['lines', 'columns', 'other sheet'].includes(recipe.zeroFlow) ? 10 : 1,
      ...(recipe.noMinus && { zeroFlow_Pa: random.between(-1.9, -0.8) }),
      ...recipe.house,
    })
    const name = again ? 'retest' : (PLACES[(hash(recipe.name) + index) % PLACES.length] as string)
    const written = writeDown(house, recipe, { name, address: `${name}, Ottersfold`, date })
    const earlier = tests[0]
    // The second test of a house repeats only the readings.
    const own =
      again && earlier ? { ...written, fields: earlier.written.fields, date: earlier.written.date } : written
    tests.push({ written: own, truth: truthOfTest(own, recipe) })
  }
  return tests
}

function plateSheet(): Sheet {
  const sheet = new Sheet('Device')
  sheet.put(1, 1, 'Q = c · dP^n (m³/h, Pa) at 1.2041 kg/m³')
  sheet.line(3, 1, ['Plate', 'c', 'n', 'min Pa', 'max Pa'])
  for (const [index, { label, coefficient, exponent }] of PLATES.entries())
    sheet.line(4 + index, 1, [label, coefficient, exponent, 2, 400])
  return sheet
}

/** Another house's test that somebody left in the workbook, out of sight. */
function oldJob(recipe: Recipe, random: Random): Sheet {
  const house = inventHouse(random, { n50: 3.1 })
  const written = writeDown(house, recipe, {
    name: 'Old Forge',
    address: 'Old Forge, Low Hallow',
    date: { year: 2025, month: 11, day: 18 },
  })
  const [sheet = new Sheet('')] = STRUCTURES[recipe.structure](
    [{ written, truth: truthOfTest(written, recipe) }],
    { ...recipe, dirt: [], tests: 'one' },
    random,
  )
  const old = new Sheet('Last job')
  for (const [key, cell] of sheet.cells) old.cells.set(key, cell)
  old.hidden = true
  return old
}

/** FNV-1a, 32 bits. */
function hash(text: string): number {
  let value = 0x811c9dc5
  for (const byte of new TextEncoder().encode(text)) value = Math.imul(value ^ byte, 0x01000193) >>> 0
  return value
}
