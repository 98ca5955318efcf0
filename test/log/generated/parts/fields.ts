import type { Recipe } from '../recipe.js'
import type { Unit } from '../units.js'
import type { Sheet, Value } from '../write/sheet.js'
import type { WrittenTest } from '../written.js'
import { dayOf, figure, labelled, numberText } from './say.js'

export type FieldName =
  | 'name'
  | 'address'
  | 'date'
  | 'tester'
  | 'volume'
  | 'gross'
  | 'envelope'
  | 'floor'
  | 'indoor'
  | 'outdoor'
  | 'barometer'
  | 'wind'

export const ALL_FIELDS: readonly FieldName[] = [
  'name',
  'address',
  'date',
  'tester',
  'volume',
  'gross',
  'envelope',
  'floor',
  'indoor',
  'outdoor',
  'barometer',
  'wind',
]

export interface FieldLine {
  field: FieldName
  label: string
  value: Value
  unit?: Unit
}

/** The form's single values in order, without those the log lacks. */
export function fieldLines(test: WrittenTest, recipe: Recipe): FieldLine[] {
  const { words, units, missing, dirt } = recipe
  const { fields } = test
  const line = (field: FieldName, label: string, value: Value, unit?: Unit): FieldLine => ({
    field,
    label,
    value,
    ...(unit && { unit }),
  })
  const lines = [
    line('name', words.building, test.name),
    line('address', words.address, test.address),
    line('date', words.date, dayOf(test.date, recipe)),
    line('tester', words.tester, 'M. Thrale'),
    line('volume', words.volume, fields.volume, units.volume),
    line('gross', 'Gross volume', Number((fields.volume * 1.29).toFixed(1)), units.volume),
    line('envelope', words.envelope, fields.envelope, units.area),
    line('floor', words.floor, fields.floor, units.area),
    ...(dirt.includes('temperatures in one cell')
      ? [
          line(
            'indoor',
            `${labelled(`${words.indoor} / ${words.outdoor}`, units.temperature.symbol, recipe.fieldUnits)}`,
            `${numberText(fields.indoor, recipe)} / ${numberText(fields.outdoor, recipe)}`,
          ),
        ]
      : [
          line('indoor', words.indoor, fields.indoor, units.temperature),
          line('outdoor', words.outdoor, fields.outdoor, units.temperature),
        ]),
    line('barometer', words.barometer, fields.barometer, units.barometer),
    line('wind', words.wind, 2),
  ]
  const left = new Set<FieldName>([
    ...(dirt.includes('gross volume too') ? [] : (['gross'] as const)),
    // The volume then is the total of the rooms.
    ...(dirt.includes('rooms on a sheet') ? (['volume'] as const) : []),
    ...(missing.includes('volume') ? (['volume', 'gross'] as const) : []),
    ...(missing.includes('temperatures') ? (['indoor', 'outdoor'] as const) : []),
    ...(missing.includes('barometer') ? (['barometer'] as const) : []),
    ...(missing.includes('name') ? (['name', 'address'] as const) : []),
    ...(missing.includes('date') ? (['date'] as const) : []),
  ])
  return lines.filter(({ field }) => !left.has(field))
}

/** Labels with their values beside, from a row downwards. Returns the next free row. */
export function putFields(
  sheet: Sheet,
  row: number,
  column: number,
  test: WrittenTest,
  recipe: Recipe,
  wanted: readonly FieldName[] = ALL_FIELDS,
): number {
  let at = row
  for (const { field, label, value, unit } of fieldLines(test, recipe)) {
    if (!wanted.includes(field)) continue
    const place = recipe.fieldUnits
    sheet.put(at, column, unit ? labelled(label, unit.symbol, place) : label)
    if (unit && typeof value === 'number') {
      const [written, look] = figure(value, unit, place, recipe)
      sheet.put(at, column + 1, written, look)
      if (place === 'beside') sheet.put(at, column + 2, unit.symbol)
    } else sheet.put(at, column + 1, value)
    at++
  }
  return at
}
