import { evaluate } from '@draughtbook/shared-calc'
import { interpretLog } from '@draughtbook/shared-calc/log'
import { expect } from 'vitest'
import { flowAtDevice, moistAirDensity } from '../generated/truth/air'
import { fitRun, type WrittenAir } from '../generated/truth/fit'
import { book, day, type Rows } from '../support/book'

type Direction = 'depressurisation' | 'pressurisation'

/** An invented house; its readings follow from a leakage curve and carry a scatter of some tenths of a per cent. */
export const HOUSE = { volume_m3: 412.6, indoor_C: 20.5, outdoor_C: 6.5, barometer_Pa: 100_840 }
const LEAK = { coefficient: 41.7, exponent: 0.644 }
const SCATTER = [0.004, -0.003, 0.002, -0.005, 0.003, 0.001, -0.002, 0.004]
const ZERO = {
  depressurisation: { before: -1.4, after: -0.9 },
  pressurisation: { before: 0.7, after: 1.2 },
} as const

/** A run as its log shows it: zero flow and eight readings in Pa and m³/h. */
export function runOf(direction: Direction) {
  const { before, after } = ZERO[direction]
  const sign = direction === 'depressurisation' ? -1 : 1
  const [inside, outside] = [HOUSE.indoor_C, HOUSE.outdoor_C].map((celsius) =>
    moistAirDensity(celsius, HOUSE.barometer_Pa),
  ) as [number, number]
  const readings = SCATTER.map((scatter, index): [number, number] => {
    const induced = 61 - 5.6 * index
    const flow = LEAK.coefficient * induced ** LEAK.exponent * (1 + scatter)
    return [
      Number((sign * induced + (before + after) / 2).toFixed(1)),
      Number(flowAtDevice(flow, direction, inside, outside).toFixed(1)),
    ]
  })
  return { direction, before, after, readings }
}
export type OddRun = ReturnType<typeof runOf>
export const dep = runOf('depressurisation')
export const pres = runOf('pressurisation')

/** Both runs, and the title over each. */
export const RUNS = [dep, pres] as const
export const titleOf = ({ direction }: OddRun) => [
  direction === 'depressurisation' ? 'Depressurisation' : 'Pressurisation',
]

/** Four zero-flow pressures with a mean. */
export const listOf = (mean: number) => [0.4, -0.3, 0.1, -0.2].map((off) => Number((mean + off).toFixed(2)))

export const HEADINGS = ['Pressure (Pa)', 'Flow (m³/h)']
/** The zero flow of a run as two rows above its readings. */
export const zeroRows = ({ before, after }: OddRun): Rows => [
  ['Zero flow before (Pa)', before],
  ['Zero flow after (Pa)', after],
]

/** Expects a value within a share of the truth. */
export const closeTo = (share: number) => (value: number | undefined, truth: number) => {
  expect(value).toBeDefined()
  expect(Math.abs((value as number) / truth - 1)).toBeLessThan(share)
}

/** n50 that follows from what is written, by the independent fit of the generated logs. */
export function n50Of(runs: readonly OddRun[], air: WrittenAir = HOUSE): number {
  const fitted = runs.map(({ direction, before, after, readings }) =>
    fitRun(
      {
        direction,
        zeroFlow_Pa: (before + after) / 2,
        readings: readings.map(([pressure_Pa, flow_m3_h]) => ({ pressure_Pa, flow_m3_h })),
      },
      air,
    ),
  )
  return fitted.reduce((sum, { q50_m3_h }) => sum + q50_m3_h, 0) / fitted.length / HOUSE.volume_m3
}

/** The form above the readings: six rows. */
export const FORM: Rows = [
  ['House', 'Pear Tree Barn'],
  ['Date', day('2026-04-22')],
  ['Internal volume (m³)', HOUSE.volume_m3],
  ['Inside temperature (°C)', HOUSE.indoor_C],
  ['Outside temperature (°C)', HOUSE.outdoor_C],
  ['Barometer (hPa)', HOUSE.barometer_Pa / 100],
]

/** Reads a log with answers: what is asked, what is said, and n50 where a record came of it. */
export function read(bytes: Uint8Array, answers: Record<string, string> = {}, fileName = 'log.xlsx') {
  const { tests, problems, questions, findings } = interpretLog({ bytes, fileName }, { answers })
  const record = tests[0]?.record
  return {
    record,
    asked: questions.map(({ path }) => path),
    texts: questions.map(({ text }) => text),
    choices: questions.flatMap(({ choices }) => choices.map(({ value }) => value)),
    said: tests.flatMap(({ findings }) => findings.map(({ message }) => message)),
    saidOfFile: findings.map(({ message }) => message),
    problems: [...problems, ...tests.flatMap((test) => test.problems)].map(({ message }) => message),
    tests: tests.length,
    records: tests.map((test) => test.record),
    n50: record && evaluate(record).results.n50?.value,
  }
}

/** One sheet of the form with rows below it. */
export const sheetOfForm = (rows: Rows, finish?: Parameters<typeof book>[1]) =>
  book({ Test: [...FORM, [null], ...rows] }, finish)
