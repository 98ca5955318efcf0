import { describe, expect, it } from 'vitest'
import { book, day, type Rows } from '../support/book'
import { dep, FORM, HOUSE, pres, read, zeroRows } from './house'

// Truth: what is written into each sheet.
const RUNS = [dep, pres]
const ENVELOPE_m2 = 480

const withFlows = (heading: string, per: number): Promise<Uint8Array> =>
  book({
    Log: [
      ...FORM,
      [null],
      ...RUNS.flatMap(
        (run): Rows => [
          [run === dep ? 'Depressurisation' : 'Pressurisation'],
          ...zeroRows(run),
          ['Pressure (Pa)', heading],
          ...run.readings.map(([pressure, flow]) => [pressure, Number((flow / per).toFixed(4))]),
          [null],
        ],
      ),
    ],
  })

describe('a column of results where the flows should be', () => {
  it.each([
    ['Air permeability (m³/(h·m²))', ENVELOPE_m2, 'a flow per square metre'],
    ['Air change rate (1/h)', HOUSE.volume_m3, 'an air change rate'],
  ])('"%s" is refused with its cell, whatever unit is answered', async (heading, per, what) => {
    const bytes = await withFlows(heading, per)
    for (const answers of [{}, { 'flow.unit': 'm3/h', 'table.columns': 'yes' }]) {
      const { record, asked, problems } = read(bytes, answers)
      expect(record).toBeUndefined()
      expect(asked).toEqual([])
      // One for each direction.
      expect(problems).toEqual(RUNS.map(() => expect.stringContaining(`"${heading}" is ${what}`)))
    }
  })
})

describe('pressures of the air outside in a list of readings', () => {
  it('"p_hPa" in every row is the barometric pressure, and no building pressure', async () => {
    const bytes = await book({
      List: [
        ['house', 'date', 'volume_m3', 'ti_C', 'te_C', 'p_hPa', 'direction', 'kind', 'dp_Pa', 'flow_m3h'],
        ...RUNS.flatMap((run): Rows => {
          const start = [
            'Pear Tree Barn',
            day('2026-04-22'),
            HOUSE.volume_m3,
            HOUSE.indoor_C,
            HOUSE.outdoor_C,
            HOUSE.barometer_Pa / 100,
            run.direction,
          ]
          return [
            [...start, 'zero before', run.before],
            ...run.readings.map((reading) => [...start, 'reading', ...reading]),
            [...start, 'zero after', run.after],
          ]
        }),
      ],
    })
    const { record, asked } = read(bytes)
    expect(asked).toEqual([])
    expect(record?.conditions.barometricPressure_Pa).toBeCloseTo(HOUSE.barometer_Pa, 3)
    expect(record?.runs.map(({ readings }) => readings.map(({ pressure_Pa }) => pressure_Pa))).toEqual(
      RUNS.map(({ readings }) => readings.map(([pressure]) => pressure)),
    )
  })
})

describe('a Czech log', () => {
  it('names the temperature of the air inside and outside', async () => {
    const bytes = await book({
      Měření: [
        ['Objekt', 'Rodinný dům'],
        ['Datum měření', day('2026-04-22')],
        ['Vnitřní objem (m³)', HOUSE.volume_m3],
        ['Teplota vnitřního vzduchu (°C)', HOUSE.indoor_C],
        ['Teplota venkovního vzduchu (°C)', HOUSE.outdoor_C],
        ['Atmosférický tlak (hPa)', HOUSE.barometer_Pa / 100],
        [null],
        ...RUNS.flatMap(
          (run): Rows => [
            [run === dep ? 'Podtlak' : 'Přetlak'],
            ['Tlakový rozdíl při nulovém průtoku před (Pa)', run.before],
            ['Tlakový rozdíl při nulovém průtoku po (Pa)', run.after],
            ['Tlakový rozdíl (Pa)', 'Objemový tok vzduchu (m³/h)'],
            ...run.readings,
            [null],
          ],
        ),
      ],
    })
    const { record, asked } = read(bytes)
    expect(asked).toEqual([])
    expect(record?.conditions).toMatchObject({
      indoorTemperature_C: HOUSE.indoor_C,
      outdoorTemperature_C: HOUSE.outdoor_C,
    })
  })
})
