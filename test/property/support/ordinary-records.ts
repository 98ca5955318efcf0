import type { TestRecord } from '@draughtbook/shared-calc'
import fc, { type Arbitrary } from 'fast-check'

type Run = TestRecord['runs'][number]
type Direction = Run['direction']

/** A number between two bounds, evenly spread, to a millionth of their distance. */
export const between = (min: number, max: number): Arbitrary<number> =>
  fc.integer({ min: 0, max: 1_000_000 }).map((share) => min + ((max - min) * share) / 1_000_000)

const zeroFlow = fc.array(between(-2, 2), { minLength: 1, maxLength: 12 })

/** A run such as people log: noisy readings about a power law, zero-flow pressures before and after. */
const run = (direction: Direction): Arbitrary<Run> =>
  fc
    .record({
      coefficient: between(2, 400),
      exponent: between(0.5, 1),
      pressures: fc.uniqueArray(fc.integer({ min: 12, max: 90 }), { minLength: 4, maxLength: 12 }),
      noise: fc.array(between(-0.03, 0.03), { minLength: 12, maxLength: 12 }),
      before: zeroFlow,
      after: zeroFlow,
      time: between(5, 60),
    })
    .map(({ coefficient, exponent, pressures, noise, before, after, time }) => ({
      direction,
      averagingTime_s: time,
      zeroFlowBefore_Pa: before,
      zeroFlowAfter_Pa: after,
      readings: pressures.map((pressure, i) => ({
        pressure_Pa: direction === 'pressurisation' ? pressure : -pressure,
        flow_m3_h: coefficient * pressure ** exponent * (1 + (noise[i] ?? 0)),
      })),
    }))

const runs = fc.oneof(
  fc.tuple(run('depressurisation'), run('pressurisation')),
  fc.tuple(run('pressurisation'), run('depressurisation')),
  run('depressurisation').map((one) => [one]),
  run('pressurisation').map((one) => [one]),
)

/** A whole ordinary test of one or both directions, in weather of all kinds. */
export const ordinaryRecord: Arbitrary<TestRecord> = fc
  .record({
    volume_m3: between(50, 5000),
    envelopeArea_m2: between(50, 3000),
    floorArea_m2: between(20, 2000),
    indoorTemperature_C: between(5, 30),
    outdoorTemperature_C: between(-20, 38),
    barometricPressure_Pa: between(80_000, 104_000),
    indoorRelativeHumidity: between(0, 1),
    outdoorRelativeHumidity: between(0, 1),
    runs,
  })
  .map(({ volume_m3, envelopeArea_m2, floorArea_m2, runs: ofTest, ...conditions }) => ({
    format: 'draughtbook/record@1',
    building: { name: 'random', volume_m3, envelopeArea_m2, floorArea_m2 },
    test: { date: '2026-10-14', method: 'iso-9972:2015' },
    conditions,
    runs: [...ofTest],
    target: { quantity: 'n50', limit: 1, directions: 'any' },
  }))
