import { methods, type TestRecord, targetPresets } from '@draughtbook/shared-calc'
import fc, { type Arbitrary } from 'fast-check'

// Any number the schema lets pass, its bounds and the numbers next to zero more often than their share.
const number = (min: number, max: number): Arbitrary<number> =>
  fc.oneof(
    { weight: 3, arbitrary: fc.double({ min, max, noNaN: true }) },
    { weight: 1, arbitrary: fc.constantFrom(min, max) },
  )
/** A field that may be missing, as an object to spread. */
const maybe = <T extends object>(fields: { [K in keyof T]: Arbitrary<T[K]> }): Arbitrary<Partial<T>> =>
  fc.record(fields, { requiredKeys: [] }) as Arbitrary<Partial<T>>

const flow = number(1e-6, 1e6)
const ranges = fc.array(
  fc.tuple(
    fc.constantFrom('A', 'B'),
    maybe({
      coefficient: number(1e-6, 1e6),
      exponent: number(0.1, 2),
      minimumPressure_Pa: number(0, 10_000),
      maximumPressure_Pa: number(0, 10_000),
      minimumFlow_m3_h: number(0, 1e6),
      maximumFlow_m3_h: number(0, 1e6),
    }),
  ),
  { maxLength: 3 },
)

// Most runs lie on one side of zero and read their flows, so that many records can be worked out at all.
const often = <T>(usual: Arbitrary<T>, wild: Arbitrary<T>): Arbitrary<T> =>
  fc.oneof({ weight: 4, arbitrary: usual }, { weight: 1, arbitrary: wild })
const indicated = flow.map((flow_m3_h) => ({ flow_m3_h }))
const byDevice = fc
  .tuple(number(-10_000, 10_000), fc.constantFrom('A', 'B'))
  .map(([devicePressure_Pa, range]) => ({ devicePressure_Pa, range }))
const readingsOf = (pressure_Pa: Arbitrary<number>, how: Arbitrary<object>) =>
  fc.array(fc.record({ pressure_Pa, how }), { minLength: 3, maxLength: 8 })
const readings = fc.oneof(
  { weight: 6, arbitrary: readingsOf(number(1e-3, 1000), indicated) },
  { weight: 2, arbitrary: readingsOf(number(10, 100), byDevice) },
  {
    weight: 1,
    arbitrary: readingsOf(fc.oneof(number(-1000, 1000), number(0, 1e-9)), fc.oneof(indicated, byDevice)),
  },
)
const zeroFlow = fc.array(often(number(-1e-3, 1e-3), fc.oneof(number(-5, 5), number(-200, 200))), {
  maxLength: 12,
})

const run = (direction: 'depressurisation' | 'pressurisation') =>
  fc
    .record({
      negative: fc.boolean(),
      readings,
      more: maybe({
        averagingTime_s: number(0, 3600),
        zeroFlowBefore_Pa: zeroFlow,
        zeroFlowAfter_Pa: zeroFlow,
      }),
    })
    .map(({ negative, readings: of, more }) => ({
      direction,
      ...more,
      readings: of.map(({ pressure_Pa, how }) => ({
        pressure_Pa: negative ? -pressure_Pa : pressure_Pa,
        ...how,
      })),
    }))

const target = fc.oneof(
  fc.constant(undefined),
  fc.constantFrom(...targetPresets.map(({ id }) => id)).map((preset) => ({ preset })),
  fc
    .tuple(
      fc.constantFrom('n_pr' as const, 'qE_pr' as const, 'qF_pr' as const, 'q_pr' as const),
      number(1e-6, 1e7),
      number(1, 100),
      fc.constantFrom('mean' as const, 'each' as const, 'any' as const),
      fc.option(fc.integer({ min: 0, max: 6 }), { nil: undefined }),
    )
    .map(([quantity, limit, referencePressure_Pa, directions, decimalPlaces]) => ({
      quantity,
      limit,
      referencePressure_Pa,
      directions,
      ...(decimalPlaces !== undefined && { decimalPlaces }),
    })),
)

/** Any record that the schema lets pass, sensible or not: numbers anywhere in their bounds, fields missing at random. */
export const anyRecord: Arbitrary<TestRecord> = fc
  .record({
    building: maybe({
      volume_m3: number(1, 1e7),
      envelopeArea_m2: number(1, 1e7),
      floorArea_m2: number(1, 1e7),
      height_m: number(0.5, 1000),
      altitude_m: number(-500, 6000),
      largeBuilding: fc.constant('a hall'),
      volumeBasis: fc.constantFrom('net' as const, 'overall internal' as const),
    }),
    indoorTemperature_C: number(-30, 60),
    outdoorTemperature_C: number(-60, 60),
    conditions: maybe({
      barometricPressure_Pa: number(45_000, 115_000),
      indoorRelativeHumidity: number(0, 1),
      outdoorRelativeHumidity: number(0, 1),
      windSpeed_m_s: number(0, 60),
      windAt: fc.constantFrom('ground' as const, 'meteorological' as const),
      beaufort: fc.integer({ min: 0, max: 12 }),
    }),
    method: fc.constantFrom(...methods.map(({ id }) => id)),
    device: maybe({ referenceDensity_kg_m3: number(0.8, 1.6), ranges }),
    runs: fc.oneof(
      fc.tuple(run('depressurisation'), run('pressurisation')),
      run('pressurisation').map((one) => [one]),
    ),
    target,
  })
  .map(({ building, conditions, method, device, runs, target: of, ...temperatures }) => ({
    format: 'draughtbook/record@1' as const,
    building: { name: 'any', ...building },
    test: { date: '2026-10-14', method },
    conditions: { ...temperatures, ...conditions },
    flowDevice: {
      ...(device.referenceDensity_kg_m3 !== undefined && {
        referenceDensity_kg_m3: device.referenceDensity_kg_m3,
      }),
      ...(device.ranges && { ranges: device.ranges.map(([label, range]) => ({ label, ...range })) }),
    },
    runs: [...runs],
    ...(of && { target: of }),
  }))
