import { demoRecord } from './record'

/** Numbers of a fixed sequence between 0 and 1, so that every run has the same record. */
function sequence(): () => number {
  let state = 1
  return () => {
    state = (state * 16_807) % 2_147_483_647
    return state / 2_147_483_647
  }
}

/**
 * A record about as large as the schema and the largest body allow: two runs of the most readings of devices, the most
 * zero-flow pressures, openings and leaks.
 */
export function nearLargestRecord({ stations = 500, devices = 2 } = {}) {
  const next = sequence()
  const many = <T>(count: number, make: (i: number) => T) => Array.from({ length: count }, (_, i) => make(i))
  const record = demoRecord()
  const zeroFlow = () => many(1000, () => Number((next() - 1.5).toFixed(1)))
  const runs = record.runs.map((run, index) => ({
    ...run,
    zeroFlowBefore_Pa: zeroFlow(),
    zeroFlowAfter_Pa: zeroFlow(),
    readings: many(stations, (i) => {
      const pressure_Pa = 12 + (58 * i) / stations
      // An opening of exponent 0.62 with a scatter of 1 %, its flow shared by devices of the narrow range.
      const flow = 15 * pressure_Pa ** 0.62 * (1 + 0.02 * (next() - 0.5))
      const devicePressure_Pa = Number(((flow / devices / 11.86) ** (1 / 0.512)).toFixed(2))
      const device = { devicePressure_Pa, range: 'narrow' }
      return {
        pressure_Pa: Number((index === 0 ? -pressure_Pa : pressure_Pa).toFixed(1)),
        devices: many(devices, () => device),
      }
    }),
  }))
  const test = {
    ...record.test,
    openings: many(500, (i) => ({ opening: `opening ${i} of the house (invented)`, state: 'closed' })),
  }
  const list = many(2000, (i) => ({
    place: `place ${i} on the upper floor (invented)`,
    kind: 'socket or chase',
    size: { area_cm2: 1 },
    count: 1,
    fixed: i % 2 === 0,
  }))
  const flowDevice = { ranges: [{ label: 'narrow', coefficient: 11.86, exponent: 0.512 }] }
  return { ...record, format: 'draughtbook/record@2', test, flowDevice, runs, leaks: { list } }
}
