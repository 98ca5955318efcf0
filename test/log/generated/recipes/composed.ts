import { type Random, randomFrom } from '../random.js'
import { type Column, type Dirt, type RecipeWish, recipe, type Structure, type UnitPlace } from '../recipe.js'
import { BAROMETER, CUSTOMARY, FLOW, type Units } from '../units.js'
import type { Wording } from '../words/index.js'

const COUNT = 50

const WORDINGS: readonly Wording[] = [
  ...(['form', 'short', 'house', 'american', 'protocol', 'kurz'] as const),
  ...(['french', 'dutch', 'polish', 'spanish', 'italian', 'danish'] as const),
]
const STRUCTURES: readonly Structure[] = [
  ...(['beside', 'below', 'beside', 'below', 'sheets', 'across'] as const),
  ...(['pairs', 'one table', 'reading rows', 'test rows', 'gauge text'] as const),
]
const IN_LABELS: readonly UnitPlace[] = ['brackets', 'square', 'comma']
const TABLES: readonly (readonly Column[])[] = [
  ['number', 'pressure', 'flow'],
  ['pressure', 'flow'],
  ['number', 'flow', 'pressure'],
  ['number', 'target', 'pressure', 'flow'],
  ['number', 'time', 'pressure', 'flow', 'remark'],
  ['number', 'device', 'pressure', 'flow'],
  ['number', 'pressure', 'flow', 'corrected'],
  ['number', 'fanSpeed', 'pressure', 'device', 'flow'],
]
const FORM_DIRT: readonly Dirt[] = [
  'letterhead',
  'n50 in the title',
  'title page',
  'results',
  'temperatures in one cell',
]
const TABLE_DIRT: readonly Dirt[] = [
  'average row',
  'blank rows',
  'struck-out reading',
  'leaks below',
  'merged headings',
  'wide gap',
]

/** Logs put together by chance from everything the others are made of, as far as it goes together. */
export const composed = Array.from({ length: COUNT }, (_, index) => compose(index + 1))

function compose(index: number) {
  const random = randomFrom(7919 * index)
  const words = random.pick(WORDINGS)
  const structure = random.pick(STRUCTURES)
  const blocks = structure === 'beside' || structure === 'below' || structure === 'sheets'
  const units: Partial<Units> =
    words === 'american'
      ? CUSTOMARY
      : {
          flow: random.pick([FLOW.m3h, FLOW.m3h, FLOW.m3h, FLOW.ls, FLOW.m3s]),
          barometer: random.pick([BAROMETER.hPa, BAROMETER.mbar, BAROMETER.kPa, BAROMETER.Pa]),
        }
  const table = blocks ? random.pick(TABLES) : (['number', 'pressure', 'flow'] as const)
  const wish: RecipeWish = {
    words,
    units,
    structure,
    fieldUnits: random.pick([...IN_LABELS, 'beside'] as const),
    tableUnits: tableUnits(structure, random),
    table,
    dirt: dirt(structure, table, random),
    ...(blocks && { zeroFlow: random.pick(['labels', 'labels', 'two cells', 'lines', 'columns'] as const) }),
    ...(structure === 'gauge text' && { file: random.pick(['semicolon', 'tab', 'comma'] as const) }),
    ...(structure === 'gauge text' && { dirt: ['junk lines'] as const }),
  }
  return recipe(`composed ${index}, ${words}, ${structure}`, wish)
}

function tableUnits(structure: Structure, random: Random): UnitPlace {
  if (structure === 'across') return random.pick([...IN_LABELS, 'beside'] as const)
  if (structure === 'one table' || structure === 'reading rows' || structure === 'test rows')
    return random.pick(IN_LABELS)
  return random.pick([...IN_LABELS, 'row'] as const)
}

function dirt(structure: Structure, table: readonly Column[], random: Random): Dirt[] {
  const some: Dirt[] = []
  const form = structure !== 'reading rows' && structure !== 'test rows'
  if (form && random.next() < 0.5) some.push(random.pick(FORM_DIRT))
  if ((structure === 'beside' || structure === 'below') && random.next() < 0.7) {
    const one = random.pick(TABLE_DIRT)
    // A summary row needs a first column for its name.
    if (one !== 'average row' || table.includes('number')) some.push(one)
  }
  return some
}
