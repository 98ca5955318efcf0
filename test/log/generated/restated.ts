import type { Restated } from './change.js'
import type { GeneratedLog } from './generate.js'
import { moistAirDensity } from './truth/air.js'
import type { FittedRun } from './truth/fit.js'
import { truthOfTest } from './truth/of-test.js'
import { BAROMETER, FLOW, PRESSURE, TEMPERATURE, type Unit, VOLUME } from './units.js'

/**
 * Air change rates that are right after one unit word was changed: the figures of the log then mean something else, for one
 * direction, for both, for one of the two temperatures, or for one list of pressures. Which of them, only the sheet knows.
 */
export function rightAfter(log: GeneratedLog, restated: Restated | undefined): number[] {
  const [test] = log.tests
  if (!test) return []
  if (!restated) return [test.n50_1_h]
  const { from, to } = restated
  const share = to.factor / from.factor
  const rate = (factor: (run: FittedRun) => number, volume = test.volume_m3) =>
    test.runs.reduce((sum, run) => sum + run.q50_m3_h * factor(run), 0) / test.runs.length / volume
  const plain = test.n50_1_h
  if (isOf(FLOW, from)) {
    const only = (direction: string) => rate((run) => (run.direction === direction ? share : 1))
    return [plain * share, only('depressurisation'), only('pressurisation')]
  }
  if (isOf(VOLUME, from)) return [plain / share]
  const anew = (value: number) => ((value - (from.offset ?? 0)) / from.factor) * to.factor + (to.offset ?? 0)
  const { indoor_C, outdoor_C, barometer_Pa } = test
  const inAir = (indoor: number, outdoor: number, barometer: number) => {
    const density = [
      moistAirDensity(indoor_C, barometer_Pa),
      moistAirDensity(outdoor_C, barometer_Pa),
    ] as const
    const other = [moistAirDensity(indoor, barometer), moistAirDensity(outdoor, barometer)] as const
    return rate(({ direction, exponent }) => {
      const [device, leak] = direction === 'depressurisation' ? ([0, 1] as const) : ([1, 0] as const)
      const through = (of: readonly [number, number]) => (of[device] / of[leak]) * of[leak] ** (1 - exponent)
      return through(other) / through(density)
    })
  }
  if (isOf(TEMPERATURE, from))
    return [inAir(anew(indoor_C), outdoor_C, barometer_Pa), inAir(indoor_C, anew(outdoor_C), barometer_Pa)]
  const barometer = isOf(BAROMETER, from) ? [inAir(indoor_C, outdoor_C, anew(barometer_Pa))] : []
  if (isOf(PRESSURE, from)) return [...pressuresRestated(log, share), ...barometer]
  return [plain, ...barometer]
}

/** One label or heading names the unit of the values before, of those after, or of the readings of one run. */
function pressuresRestated(
  { written: [test], recipe, tests: [truth] }: GeneratedLog,
  share: number,
): number[] {
  if (!test || !truth) return []
  const scaled = (values: readonly number[]) => values.map((value) => value * share)
  return test.runs.flatMap((run, index) =>
    [
      { ...run, before: scaled(run.before) },
      { ...run, after: scaled(run.after) },
      {
        ...run,
        readings: run.readings.map((reading) => ({ ...reading, pressure: reading.pressure * share })),
      },
    ].map((other) => {
      const runs = test.runs.map((one, at) => (at === index ? other : one))
      return truthOfTest({ ...test, runs }, recipe).n50_1_h
    }),
  )
}

const isOf = (units: Readonly<Record<string, Unit>>, unit: Unit) => Object.values(units).includes(unit)
