import { describe, expect, it } from 'vitest'
import { readLabel, says } from '../../../shared-calc/src/log/interpret/words/label'
import { book, day, type Rows } from '../support/book'
import { closeTo, dep, HEADINGS, HOUSE, n50Of, pres, read, sheetOfForm, zeroRows } from './house'

// Truth: what is written into each log, and the independent fit of ./house.
const close = closeTo(0.0008)

it('takes no number of a hidden column beyond a gap for the value of a label', async () => {
  const rows: Rows = [
    ['House', 'Date', 'Internal volume (m³)', 'Envelope area (m²)', null, 'v3.2'],
    ['Pear Tree Barn', day('2026-04-22'), HOUSE.volume_m3, 512, null, 1],
    [null, null, null, null, null, 2],
    ['Inside temperature (°C)', 'Outside temperature (°C)', 'Barometer (hPa)', null, null, 3],
    [HOUSE.indoor_C, HOUSE.outdoor_C, HOUSE.barometer_Pa / 100],
    [null],
    ['Depressurisation'],
    ...zeroRows(dep),
    HEADINGS,
    ...dep.readings,
  ]
  const bytes = await book({ Test: rows }, ({ worksheets: [sheet] }) => {
    if (sheet) sheet.getColumn(6).hidden = true
  })
  const { asked, record, n50 } = read(bytes)
  expect(asked).toEqual([])
  expect(record?.building.envelopeArea_m2).toBe(512)
  expect(record?.conditions.barometricPressure_Pa).toBe(HOUSE.barometer_Pa)
  close(n50, n50Of([dep]))
})

describe('the means of each sign beside that of all values', () => {
  it.each(['gemiddeld', 'Mw.', 'Resultat'])('under "%s +", "%s −" and "%s"', async (word) => {
    const signs = (value: number) => [1.1, -2.3, value]
    const { asked, record, n50 } = read(
      await sheetOfForm([
        ['Depressurisation'],
        ['Zero flow (Pa)', `${word} +`, `${word} −`, word],
        ['before', ...signs(dep.before)],
        ['after', ...signs(dep.after)],
        HEADINGS,
        ...dep.readings,
      ]),
    )
    expect(asked).toEqual([])
    expect(record?.runs[0]?.zeroFlowBefore_Pa).toEqual([dep.before])
    close(n50, n50Of([dep]))
  })
})

it('reads zero flow whose label stands where the flow would', async () => {
  const rows = [dep, pres].flatMap(
    (run): Rows => [
      [run === dep ? 'Undertrykk' : 'Overtrykk'],
      ['Trykk (Pa)', 'Luftmengde (m³/h)'],
      [run.before, 'Trykk uten strømning før'],
      ...run.readings,
      [run.after, 'Trykk uten strømning etter'],
      [null],
    ],
  )
  const { asked, n50 } = read(await sheetOfForm(rows))
  expect(asked).toEqual([])
  close(n50, n50Of([dep, pres]))
})

it.each([
  ['Pressure without air flow', true],
  ['Druck ohne Strömung (Pa)', true],
  ['Tlak bez průtoku', true],
  ['Volumenstrom ohne Druckkorrektur (m³/h)', false],
])('"%s" speaks of zero flow: %s', (text, isZero) => {
  expect(says(readLabel(text), 'zero')).toBe(isZero)
})
