import { describe, expect, it } from 'vitest'
import { book, day, type Rows } from '../support/book'
import { dep, FORM, HEADINGS, HOUSE, pres, read, sheetOfForm, zeroRows } from './house'

// Truth: what is written into each sheet.
const RUNS = [dep, pres]

describe('short labels of zero flow', () => {
  it('ZFP1 and ZFP2 once a direction, in a list of one row a test', async () => {
    const bytes = await book({
      List: [
        [null, null, null, null, null, null, 'Depressurisation', ...Array(17).fill(null), 'Pressurisation'],
        [
          'Ref',
          'Date',
          'Volume (m³)',
          'Inside °C',
          'Outside °C',
          'Barometer (hPa)',
          ...RUNS.flatMap(({ readings }) => [
            'ZFP1',
            'ZFP2',
            ...readings.flatMap((_, index) => [`Pa ${index + 1}`, `m³/h ${index + 1}`]),
          ]),
        ],
        [
          'R-88',
          day('2026-04-22'),
          HOUSE.volume_m3,
          HOUSE.indoor_C,
          HOUSE.outdoor_C,
          HOUSE.barometer_Pa / 100,
          ...RUNS.flatMap(({ before, after, readings }) => [before, after, ...readings.flat()]),
        ],
      ],
    })
    const { record, asked } = read(bytes)
    expect(asked).toEqual([])
    expect(record?.runs.map((run) => [run.zeroFlowBefore_Pa, run.zeroFlowAfter_Pa])).toEqual(
      RUNS.map(({ before, after }) => [[before], [after]]),
    )
  })

  it('a value "après essai" is no number of the test', async () => {
    const bytes = await sheetOfForm(
      RUNS.flatMap(
        (run): Rows => [
          [run === dep ? 'Dépressurisation' : 'Pressurisation'],
          ['Pression naturelle (Pa)', 'avant essai', run.before, 'après essai', run.after],
          HEADINGS,
          ...run.readings,
          [null],
        ],
      ),
    )
    const { record, tests } = read(bytes)
    expect(tests).toBe(1)
    expect(record?.test.id).toBeUndefined()
    expect(record?.runs).toHaveLength(2)
  })
})

describe('areas in one word', () => {
  const withArea = (label: string, value: number) =>
    book({
      Test: [
        ...FORM,
        [label, value],
        [null],
        ...RUNS.flatMap(
          (run): Rows => [
            [run === dep ? 'Depressurisation' : 'Pressurisation'],
            ...zeroRows(run),
            HEADINGS,
            ...run.readings,
            [null],
          ],
        ),
      ],
    })

  it('Energiebezugsfläche is a floor area', async () => {
    const { record } = read(await withArea('Energiebezugsfläche (m²)', 161.5))
    expect(record?.building?.floorArea_m2).toBe(161.5)
  })

  it('Omhyllingsareal is an envelope area', async () => {
    const { record } = read(await withArea('Omhyllingsareal (m²)', 388.4))
    expect(record?.building?.envelopeArea_m2).toBe(388.4)
  })
})
