import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { commandLine } from '../service/support/command-line'

/** What was written down of each log by whoever invented it, apart from this reader. */
interface Expected {
  readonly n50: number
  readonly readings: readonly number[]
  readonly per_run?: readonly { direction: 'dep' | 'pres'; n: number; q50: number }[]
}
type Entry = Expected | { readonly tests: readonly Expected[] }

const folder = join(import.meta.dirname, 'samples')
const expected = JSON.parse(readFileSync(join(folder, 'expected.json'), 'utf8')) as Record<string, Entry>
/** The series holds no house: what it lacks is given as its notes say. */
const lacking: Record<string, string[]> = {
  '20-raw-series.csv': [
    'building.volume_m3=340',
    'conditions.indoorTemperature_C=20',
    'conditions.outdoorTemperature_C=9',
    'conditions.barometricPressure_Pa=1013 hPa',
  ],
}

/** Half a unit of the third figure, and a station's own averaging for the series. */
const tolerance = (name: string) => (name.includes('series') ? 0.005 : 0.0025)

describe('a log as a small firm keeps it, by plain "evaluate"', () => {
  it.each(Object.entries(expected))('%s gives the figures it holds', async (name, entry) => {
    const answers = (lacking[name] ?? []).flatMap((one) => ['--set', one])
    const { code, out, err } = await commandLine('evaluate', join(folder, name), '--json', ...answers)
    expect([code, err]).toEqual([0, []])
    const found = [JSON.parse(out)].flat()
    const wanted = 'tests' in entry ? entry.tests : [entry]
    expect(found).toHaveLength(wanted.length)
    for (const [index, { n50, readings, per_run = [] }] of wanted.entries()) {
      const { results, runs } = found[index]
      expect(Math.abs(results.n50.value / n50 - 1)).toBeLessThan(tolerance(name))
      if (!name.includes('series'))
        expect(runs.map((run: { readings: unknown[] }) => run.readings.length)).toEqual(readings)
      for (const { direction, n, q50 } of per_run) {
        const run = runs.find((one: { direction: string }) => one.direction.startsWith(direction))
        expect(Math.abs(run.airFlowExponent.value - n)).toBeLessThan(0.002)
        expect(Math.abs(run.q50.value / q50 - 1)).toBeLessThan(tolerance(name))
      }
    }
  })

  it('says of two fans with their total that the total was read, not a mean', async () => {
    const { out } = await commandLine('evaluate', join(folder, '24-two-fans-and-total.xlsx'), '--json')
    const findings = JSON.parse(out).findings as { message: string; cells?: string[] }[]
    const about = findings.filter(({ cells }) => cells?.some((cell) => /^Test!B1[34]/.test(cell)))
    expect(about.map(({ message }) => message)).toEqual([
      expect.stringMatching(/^The flow is the total in column Test!D13\./),
    ])
  })

  it('names what was left out, and where', async () => {
    const { out } = await commandLine('evaluate', join(folder, '14-note-in-reading-cell.xlsx'), '--json')
    const findings = JSON.parse(out).findings as { message: string; cells?: string[] }[]
    expect(findings.find(({ message }) => message.includes('repeat, gust'))?.cells).toEqual(['Test!B17'])
    expect(findings.find(({ message }) => message.includes('(gusty)'))?.cells).toEqual(['Test!G19'])
    const filtered = await commandLine('evaluate', join(folder, '18-filtered-list.xlsx'), '--json')
    expect(filtered.out).toMatch(/Hidden or filtered tests were left out: .*J-77/)
    const other = await commandLine(
      'evaluate',
      join(folder, '27-test-and-retest.xlsx'),
      '--set',
      'test=2',
      '--json',
    )
    expect(JSON.parse(other.out).results.n50.value).toBeCloseTo(0.811, 2)
  })
})

describe('what a log leaves open', () => {
  const series = join(folder, '20-raw-series.csv')

  it('is asked with one line a question and the option that answers it; nothing is calculated', async () => {
    const { code, out, err } = await commandLine('evaluate', series, '--json')
    expect([code, out]).toEqual([2, ''])
    expect(err).toHaveLength(4)
    expect(err.join('\n')).toMatch(/internal volume.*--set building\.volume_m3=/)
    expect(err.join('\n')).toMatch(/indoor temperature.*--set conditions\.indoorTemperature_C=/)
    expect(err[3]).toMatch(/^Then: draughtbook evaluate .*--set building\.volume_m3=/)
  })

  it('takes answers as a cell would be typed, and names the nearest path for a wrong one', async () => {
    const given = [
      'building.volume_m3=12007 ft3',
      'conditions.indoorTemperature_C=68 °F',
      'conditions.outdoorTemperature_C=9',
      'conditions.barometricPressure_Pa=1013 mbar',
    ]
    const { code, out } = await commandLine(
      'evaluate',
      series,
      '--json',
      ...given.flatMap((one) => ['--set', one]),
    )
    expect(code).toBe(0)
    // 12007 ft³ = 340.0 m³ (1 ft = 0.3048 m).
    expect(JSON.parse(out).results.n50.value).toBeCloseTo(0.648, 2)
    const wrong = await commandLine('evaluate', series, '--set', 'building.volum=340')
    expect([wrong.code, wrong.err.join('\n')]).toEqual([
      2,
      expect.stringMatching(/"building\.volum" .*did you mean building\.volume_m3\?/),
    ])
    const bad = await commandLine('evaluate', series, '--set', 'building.volume_m3=large')
    expect(bad.err.join('\n')).toMatch(/"large" is not a number/)
  })
})
