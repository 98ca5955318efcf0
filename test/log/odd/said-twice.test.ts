import { describe, expect, it } from 'vitest'
import { book, day, type Rows } from '../support/book'
import { closeTo, dep, FORM, HEADINGS, HOUSE, n50Of, type OddRun, pres, read, zeroRows } from './house'

// Truth: the independent fit of ./house for what is written into each log.
const close = closeTo(0.002)
const RUNS = [dep, pres]
const titleOf = (run: OddRun) => (run === dep ? 'Depressurisation' : 'Pressurisation')
const sheet = (rows: Rows) => book({ Test: [...FORM, [null], ...rows] })
const bothRuns = (of: (run: OddRun) => Rows): Rows =>
  RUNS.flatMap((run): Rows => [[titleOf(run)], ...of(run)])

describe('units that a log states twice', () => {
  it('over flows are asked for, with both', async () => {
    const { asked, choices } = read(
      await sheet(
        bothRuns((run) => [...zeroRows(run), ['Pressure', 'Flow in l/s'], ['Pa', 'm³/h'], ...run.readings]),
      ),
    )
    expect([asked, choices]).toEqual([['flow.unit'], ['m3/h', 'l/s']])
  })

  it('beside the volume are asked for', async () => {
    const form: Rows = [
      ['House', 'Pear Tree Barn'],
      ['Date', day('2026-04-22')],
      ['Volume (ft³)', HOUSE.volume_m3, 'm³'],
      ['Inside temperature (°C)', HOUSE.indoor_C],
      ['Outside temperature (°C)', HOUSE.outdoor_C],
    ]
    const bytes = await book({
      Test: [...form, [null], ...bothRuns((run) => [...zeroRows(run), HEADINGS, ...run.readings])],
    })
    expect(read(bytes).asked).toEqual(['volume.unit'])
  })
})

describe('zero flow in lines of several words', () => {
  it('is of the direction in front of its line, whatever table is nearer', async () => {
    const { asked, n50 } = read(
      await sheet(
        RUNS.flatMap(
          (run): Rows => [
            [titleOf(run), 'P0 start', run.before, 'P0 end', run.after],
            HEADINGS,
            ...run.readings,
            [null],
          ],
        ),
      ),
    )
    expect(asked).toEqual([])
    close(n50, n50Of(RUNS))
  })

  it('below a line with results of the run is read', async () => {
    const { asked, n50 } = read(
      await sheet(
        RUNS.flatMap(
          (run): Rows => [
            [titleOf(run), 'C =', 41.7, 'n =', 0.644],
            ['Δp0,before =', run.before, 'Δp0,after =', run.after],
            HEADINGS,
            ...run.readings,
            [null],
          ],
        ),
      ),
    )
    expect(asked).toEqual([])
    close(n50, n50Of(RUNS))
  })

  it('with the means of both signs in front is the mean of all', async () => {
    const line = (label: string, mean: number) => [
      label,
      'mean of positive',
      Math.max(mean, 0) + 0.2,
      'mean of negative',
      Math.min(mean, 0) - 0.3,
      'mean',
      mean,
      'Pa',
    ]
    const { asked, n50 } = read(
      await sheet(
        bothRuns((run) => [
          line('Zero-flow pressure, before', run.before),
          line('Zero-flow pressure, after', run.after),
          HEADINGS,
          ...run.readings,
        ]),
      ),
    )
    expect(asked).toEqual([])
    close(n50, n50Of(RUNS))
  })

  it('is that of one sign where the other is nought', async () => {
    const pair = (mean: number) => [Math.max(mean, 0), Math.min(mean, 0)]
    const { asked, n50 } = read(
      await sheet(
        bothRuns((run) => [
          ['Δp01+ (Pa)', 'Δp01- (Pa)', 'Δp02+ (Pa)', 'Δp02- (Pa)'],
          [...pair(run.before), ...pair(run.after)],
          HEADINGS,
          ...run.readings,
        ]),
      ),
    )
    expect(asked).toEqual([])
    close(n50, n50Of(RUNS))
  })

  it('that a heading of the pressures speaks of is asked about', async () => {
    const { asked, choices } = read(
      await sheet(
        bothRuns((run) => [...zeroRows(run), ['Δp ohne Δp0 (Pa)', 'Flow (m³/h)'], ...run.readings]),
      ),
    )
    expect(asked).toEqual(['runs[0].zeroFlow', 'runs[1].zeroFlow'])
    expect(choices).toEqual(['as read', 'none', 'as read', 'none'])
  })
})

describe('columns and lines that say the same', () => {
  it('of least, greatest and mean pressure the mean is read', async () => {
    const { asked, n50 } = read(
      await sheet(
        bothRuns((run) => [
          ...zeroRows(run),
          ['p min (Pa)', 'p max (Pa)', 'p mean (Pa)', 'Flow (m³/h)'],
          ...run.readings.map(([p, q], index) => [p - 1.3 - index / 10, p + 1.1 + index / 10, p, q]),
        ]),
      ),
    )
    expect(asked).toEqual([])
    close(n50, n50Of(RUNS))
  })

  it('a mean of temperatures of several floors is taken', async () => {
    const form: Rows = [
      ...FORM.slice(0, 3),
      ['Inside temperature, ground floor (°C)', HOUSE.indoor_C + 0.5],
      ['Inside temperature, first floor (°C)', HOUSE.indoor_C - 0.5],
      ['Inside temperature, mean (°C)', HOUSE.indoor_C],
      ...FORM.slice(4),
    ]
    const bytes = await book({
      Test: [...form, [null], ...bothRuns((run) => [...zeroRows(run), HEADINGS, ...run.readings])],
    })
    const { asked, n50 } = read(bytes)
    expect(asked).toEqual([])
    close(n50, n50Of(RUNS))
  })

  it('the ring of a whole run stands in its title', async () => {
    const { asked, record } = read(
      await sheet([
        ...RUNS.flatMap(
          (run): Rows => [
            [`${titleOf(run)}, ring used: B`],
            ...zeroRows(run),
            ['Building pressure (Pa)', 'Fan pressure (Pa)'],
            ...run.readings.map(([p, q]) => [p, Number(((q / 32.4) ** (1 / 0.5)).toFixed(1))]),
            [null],
          ],
        ),
        ['Ring', 'Coefficient (m³/h)', 'Exponent'],
        ['A', 81.6, 0.5],
        ['B', 32.4, 0.5],
      ]),
    )
    expect(asked).toEqual([])
    const ranges = record?.runs.flatMap(({ readings }) => readings.map((one) => 'range' in one && one.range))
    expect(new Set(ranges)).toEqual(new Set(['B']))
  })
})
