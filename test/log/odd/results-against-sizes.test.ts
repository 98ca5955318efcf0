import { describe, expect, it } from 'vitest'
import { book, day, type Rows } from '../support/book'
import {
  closeTo,
  dep,
  FORM,
  HEADINGS,
  HOUSE,
  n50Of,
  type OddRun,
  pres,
  read,
  sheetOfForm,
  zeroRows,
} from './house'

// Truth: the independent fit of ./house for what is written into each log, and NIST SP 811 for units.
const close = closeTo(0.003)
const RUNS = [dep, pres] as const
const n50 = n50Of(RUNS)
const table = (run: OddRun, scale = 1): Rows => [
  [run === dep ? 'Depressurisation' : 'Pressurisation'],
  ...zeroRows(run),
  HEADINGS,
  ...run.readings.map(([p, q]) => [p, Number((q / scale).toFixed(2))]),
]
const tables: Rows = RUNS.flatMap((run): Rows => [...table(run), [null]])
const form = (volume: readonly (string | number)[], ...more: Rows): Rows => [
  ...FORM.map((row) => (String(row[0]).startsWith('Internal volume') ? volume : row)),
  ...more,
  [null],
]
const VOLUME = 'building.volume_m3'

describe('a size that the result of the log itself contradicts', () => {
  it('is asked about where the volume is a gross one, and each answer is taken', async () => {
    const gross = Number((HOUSE.volume_m3 * 1.24).toFixed(1))
    const bytes = await book({
      Test: [...form(['Volume (m³)', gross]), ...tables, ['n50 (1/h)', Number(n50.toFixed(2))]],
    })
    const { asked, texts, choices } = read(bytes)
    expect(asked).toEqual([VOLUME])
    expect(texts[0]).toContain(`With the internal volume of ${gross} m³`)
    expect(choices[0]).toBe(`${gross} m3`)
    closeTo(0.01)(Number.parseFloat(choices[1] ?? ''), HOUSE.volume_m3)
    close(read(bytes, { [VOLUME]: `${HOUSE.volume_m3} m3` }).n50, n50)
    const kept = read(bytes, { [VOLUME]: `${gross} m3` })
    close(kept.n50, (n50 * HOUSE.volume_m3) / gross)
    expect(kept.said.join()).toContain('The log\'s own "n50 (1/h)" is')
  })

  it('is asked about where the volume in m³ is headed ft³', async () => {
    const bytes = await book({
      Test: [...form(['Volume (ft³)', HOUSE.volume_m3]), ...tables, ['n50 (1/h)', Number(n50.toFixed(2))]],
    })
    const { asked, choices } = read(bytes)
    expect(asked).toEqual([VOLUME])
    closeTo(0.01)(Number.parseFloat(choices[1] ?? ''), HOUSE.volume_m3)
  })

  it.each([
    ['Air permeability at 50 Pa', 'm³/(h·m²)', 1],
    ['q50', 'l/(s·m²)', 3.6],
  ])('is asked about where the envelope area does not fit "%s" in %s', async (label, unit, scale) => {
    const area = 380
    const permeability = (n50 * HOUSE.volume_m3) / area / scale
    const log = (stated: number) =>
      book({
        Test: [
          ...form(['Internal volume (m³)', HOUSE.volume_m3], ['Envelope area (m²)', stated]),
          ...tables,
          [label, Number(permeability.toFixed(3)), unit],
        ],
      })
    expect(read(await log(area * 1.2)).asked).toEqual(['building.envelopeArea_m2'])
    const { asked, said } = read(await log(area))
    expect(asked).toEqual([])
    expect(said.join()).toContain(`The log's own "${label}" is`)
  })

  it('is none of "w50", which is for each square metre of floor', async () => {
    const bytes = await book({
      Test: [
        ...form(['Internal volume (m³)', HOUSE.volume_m3], ['Envelope area (m²)', 380]),
        ...tables,
        ['w50', 0.42, 'l/s pr. m²'],
      ],
    })
    expect(read(bytes).asked).toEqual([])
  })
})

describe('flows whose heading states another unit', () => {
  it('are asked about where the flow at 50 Pa is stated below each run', async () => {
    const at50 = n50 * HOUSE.volume_m3
    const bytes = await sheetOfForm(
      RUNS.flatMap(
        (run): Rows => [
          // 1 cfm = 1.699011 m³/h.
          ...table(run, 1.699011),
          ['Flow at 50 Pa (m³/h)', Math.round(at50)],
          [null],
        ],
      ),
    )
    const { asked, choices } = read(bytes)
    expect(asked).toEqual(['flow.unit'])
    expect(choices).toEqual(['cfm', 'as headed'])
    close(read(bytes, { 'flow.unit': 'cfm' }).n50, n50)
  })

  it('are asked about where some are less than the device measures', async () => {
    const bytes = await sheetOfForm([
      ['Fan range: 200 to 2400 m³/h'],
      [null],
      ...RUNS.flatMap((run): Rows => [...table(run, 3.6), [null]]),
    ])
    expect(read(bytes).asked).toEqual(['flow.unit'])
    close(read(bytes, { 'flow.unit': 'l/s' }).n50, n50)
  })
})

it('a height in m ü. M. is one above the sea, whatever its label', async () => {
  const bytes = await book({
    Test: [
      ['House', 'Pear Tree Barn'],
      ['Date', day('2026-04-22')],
      ...form(['Internal volume (m³)', HOUSE.volume_m3]).slice(2),
      ['Höhe', '640 m ü. M.'],
      [null],
      ...tables,
    ],
  })
  expect(read(bytes).record?.building).toMatchObject({ altitude_m: 640 })
  expect(read(bytes).record?.building.height_m).toBeUndefined()
})
