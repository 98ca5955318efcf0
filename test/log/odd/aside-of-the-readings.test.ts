import { describe, expect, it } from 'vitest'
import { book, day, type Rows, sheetOf } from '../support/book'
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

// Truth: what is written into the sheet, and the independent fit of ./house.
const close = closeTo(0.002)
const truth = n50Of([dep, pres])

const title = ({ direction }: OddRun) =>
  direction === 'depressurisation' ? 'Depressurisation' : 'Pressurisation'
const blocks = (): Rows =>
  [dep, pres].flatMap((run): Rows => [[title(run)], ...zeroRows(run), HEADINGS, ...run.readings, [null]])

describe('what stands beside or below the readings', () => {
  it('figures of a hidden column are no further zero flow of their line', async () => {
    const rows = [dep, pres].flatMap(
      (run): Rows => [
        [title(run)],
        ['Zero flow before', run.before, 'Pa', null, 53.6],
        ['Zero flow after', run.after, 'Pa', null, 55.3],
        HEADINGS,
        ...run.readings,
        [null],
      ],
    )
    const bytes = await sheetOfForm(rows, (workbook) => {
      sheetOf(workbook, 'Test').getColumn(5).hidden = true
    })
    const { record, n50, saidOfFile } = read(bytes)
    expect(record?.runs.map(({ zeroFlowBefore_Pa }) => zeroFlowBefore_Pa)).toEqual([
      [dep.before],
      [pres.before],
    ])
    expect(saidOfFile).toContain('Numbers in hidden rows or columns were not used.')
    close(n50, truth)
  })

  it('nor are they flows of another run, right behind the unit and beside the readings', async () => {
    const rows = [dep, pres].flatMap(
      (run): Rows => [
        [title(run)],
        ['Zero flow before', run.before, 'Pa', 3.3],
        ['Zero flow after', run.after, 'Pa', 3.8],
        HEADINGS,
        ...run.readings.map(([p, q]) => [p, q, null, Number((q * 0.9).toFixed(1))]),
        [null],
      ],
    )
    const bytes = await sheetOfForm(rows, (workbook) => {
      sheetOf(workbook, 'Test').getColumn(4).hidden = true
    })
    const { asked, n50 } = read(bytes)
    expect(asked).toEqual([])
    close(n50, truth)
  })

  it('nor is a figure far off in the line', async () => {
    const rows = [dep, pres].flatMap(
      (run): Rows => [
        [title(run)],
        ['Zero flow before', run.before, 'Pa', null, null, 53.6],
        ['Zero flow after', run.after, 'Pa', null, null, 55.3],
        HEADINGS,
        ...run.readings,
        [null],
      ],
    )
    close(read(await sheetOfForm(rows)).n50, truth)
  })

  it('corrected readings beside those measured are not another test', async () => {
    const rows = [dep, pres].flatMap(
      (run): Rows => [
        [title(run)],
        ...zeroRows(run),
        [...HEADINGS, null, 'Corrected pressure (Pa)', 'Corrected flow (m³/h)'],
        ...run.readings.map(([p, q]) => [
          p,
          q,
          null,
          Number((p - (run.before + run.after) / 2).toFixed(2)),
          Number((q * 1.012).toFixed(1)),
        ]),
        [null],
      ],
    )
    const { asked, tests, saidOfFile, n50 } = read(await sheetOfForm(rows))
    expect(asked).toEqual([])
    expect(tests).toBe(1)
    expect(saidOfFile).toContain(
      'The readings in column Test!D11 are those in column Test!A11 after correction. The readings as measured, in column Test!A11, were used.',
    )
    close(n50, truth)
  })

  it('nor are those below them, or on a sheet of their own', async () => {
    const corrected = (run: OddRun): Rows => [
      ['Corrected pressure (Pa)', 'Corrected flow (m³/h)'],
      ...run.readings.map(([p, q]) => [
        Number((p - (run.before + run.after) / 2).toFixed(2)),
        Number((q * 1.012).toFixed(1)),
      ]),
      [null],
    ]
    const below = [dep, pres].flatMap(
      (run): Rows => [[title(run)], ...zeroRows(run), HEADINGS, ...run.readings, [null], ...corrected(run)],
    )
    const sheets = {
      Measured: [...FORM, [null], ...blocks()],
      Corrected: [dep, pres].flatMap((run): Rows => [[title(run)], ...corrected(run)]),
    }
    for (const bytes of [await sheetOfForm(below), await book(sheets)]) {
      const { asked, tests, n50 } = read(bytes)
      expect(asked).toEqual([])
      expect(tests).toBe(1)
      close(n50, truth)
    }
  })

  it('"page 2" and the headings again go on with the run', async () => {
    const rows = [dep, pres].flatMap(
      (run): Rows => [
        [title(run)],
        ...zeroRows(run),
        HEADINGS,
        ...run.readings.slice(0, 4),
        ['page 2'],
        HEADINGS,
        ...run.readings.slice(4),
        [null],
      ],
    )
    const { asked, n50 } = read(await sheetOfForm(rows))
    expect(asked).toEqual([])
    close(n50, truth)
  })

  it('the mean of both runs below them is no third run', async () => {
    const means = dep.readings.map(([p, q], index) => {
      const [other, flow] = pres.readings[index] as [number, number]
      return [(Math.abs(p) + other) / 2, Number(((q + flow) / 2).toFixed(1))]
    })
    const { asked, tests, n50 } = read(await sheetOfForm([...blocks(), ['Mean of both'], HEADINGS, ...means]))
    expect(asked).toEqual([])
    expect(tests).toBe(1)
    close(n50, truth)
  })
})

describe('what is said in other words or places', () => {
  it('temperatures and air pressure in a remark', async () => {
    const bytes = await book({
      Test: [
        ['Date', day('2026-04-22')],
        ['Internal volume (m³)', HOUSE.volume_m3],
        ['Remarks', 'Dry, light breeze. Inside 20.5 °C, outside 6.5 °C, barometer 1008.4 hPa.'],
        [null],
        ...blocks(),
      ],
    })
    const { asked, record, n50 } = read(bytes)
    expect(asked).toEqual([])
    expect(record?.conditions).toMatchObject({
      indoorTemperature_C: HOUSE.indoor_C,
      outdoorTemperature_C: HOUSE.outdoor_C,
    })
    expect(record?.conditions.barometricPressure_Pa).toBeCloseTo(HOUSE.barometer_Pa, 6)
    close(n50, truth)
  })

  it('numbers right behind the units of a wide list', async () => {
    const heads = dep.readings.flatMap((_, index) => [`Pa${index + 1}`, `m³/h${index + 1}`])
    const bytes = await book({
      List: [
        [
          'House',
          'Date',
          'Volume (m³)',
          'Ti (°C)',
          'Te (°C)',
          'Barometer (hPa)',
          'Direction',
          'Zero before (Pa)',
          'Zero after (Pa)',
          ...heads,
        ],
        ...[dep, pres].map((run) => [
          'Pear Tree Barn',
          day('2026-04-22'),
          HOUSE.volume_m3,
          HOUSE.indoor_C,
          HOUSE.outdoor_C,
          HOUSE.barometer_Pa / 100,
          title(run),
          run.before,
          run.after,
          ...run.readings.flat(),
        ]),
      ],
    })
    const { asked, n50 } = read(bytes)
    expect(asked).toEqual([])
    close(n50, truth)
  })

  it('a small pressure over the second table is not read for the first, in words nobody knows', async () => {
    // Invented words, of no language.
    const rows = [dep, pres].flatMap(
      (run): Rows => [
        [run === dep ? 'Depressurisation' : 'Pressurisation'],
        ['Moolu rab', run.before, 'Pa'],
        ['Moolu tiv', run.after, 'Pa'],
        ['No', ...HEADINGS],
        ...run.readings.map((reading, index) => [index + 1, ...reading]),
        [null],
      ],
    )
    const bytes = await sheetOfForm(rows)
    expect(read(bytes).asked).toEqual(['zeroFlow.labels'])
    close(read(bytes, { 'zeroFlow.labels': 'zero flow' }).n50, truth)
  })

  it('Japanese words', async () => {
    const bytes = await book({
      測定: [
        ['測定日', '2026/04/22'],
        ['気積', HOUSE.volume_m3, 'm³'],
        ['室内温度', HOUSE.indoor_C, '℃'],
        ['外気温度', HOUSE.outdoor_C, '℃'],
        ['大気圧', HOUSE.barometer_Pa / 100, 'hPa'],
        [null],
        ...[dep, pres].flatMap(
          (run): Rows => [
            [run === dep ? '減圧法' : '加圧法'],
            ['ゼロ流量圧力 前', run.before, 'Pa'],
            ['ゼロ流量圧力 後', run.after, 'Pa'],
            ['No.', '圧力差 (Pa)', '通気量 (m³/h)'],
            ...run.readings.map((reading, index) => [index + 1, ...reading]),
            [null],
          ],
        ),
      ],
    })
    const { asked, n50 } = read(bytes)
    expect(asked).toEqual([])
    close(n50, truth)
  })
})
