import type { TestRecord } from '@draughtbook/shared-calc'

type Direction = TestRecord['runs'][number]['direction']

/** Barometric pressure at which dry air of 20 °C has exactly the reference density: no density correction is left. */
export const REFERENCE_AIR = {
  indoorTemperature_C: 20,
  outdoorTemperature_C: 20,
  indoorRelativeHumidity: 0,
  outdoorRelativeHumidity: 0,
  barometricPressure_Pa: 1.2041 * 287.055 * 293.15,
} as const

/** Ten zero-flow values that leave the pressures as they are. */
export const NO_ZERO_FLOW: readonly number[] = Array.from({ length: 10 }, () => 0)

/** Readings on the power law q = coefficient · |Δp|^exponent, at these pressures. */
export const powerLaw = (pressures_Pa: readonly number[], coefficient: number, exponent: number) =>
  pressures_Pa.map((pressure_Pa) => ({
    pressure_Pa,
    flow_m3_h: coefficient * Math.abs(pressure_Pa) ** exponent,
  }))

export const PRESSURES: readonly number[] = [60, 50, 40, 30, 20, 10]

/** An invented run of six readings on one power law, from 10 to 60 Pa, with nothing to object to. */
export function runOf(direction: Direction, coefficient = 20, exponent = 0.65): TestRecord['runs'][number] {
  const side = direction === 'pressurisation' ? 1 : -1
  return {
    direction,
    averagingTime_s: 20,
    zeroFlowBefore_Pa: [...NO_ZERO_FLOW],
    zeroFlowAfter_Pa: [...NO_ZERO_FLOW],
    readings: powerLaw(
      PRESSURES.map((pressure) => side * pressure),
      coefficient,
      exponent,
    ),
  }
}

/** An invented test of both directions in reference air that meets its target; no rule objects to anything in it. */
export function faultlessRecord(): TestRecord {
  return {
    format: 'draughtbook/record@1',
    building: {
      name: 'Invented house',
      volume_m3: 500,
      volumeBasis: 'net',
      envelopeArea_m2: 480,
      floorArea_m2: 190,
      height_m: 6,
    },
    test: {
      date: '2026-10-14',
      method: 'iso-9972:2015',
      preparation: 'method 1',
      openings: [{ opening: 'drain traps', state: 'filled' }],
    },
    conditions: { ...REFERENCE_AIR, windSpeed_m_s: 2, windAt: 'ground' },
    pressureGauge: { serial: 'G-1', calibrationDue: '2027-03-01' },
    flowDevice: {
      serial: 'D-1',
      calibrationDue: '2027-03-01',
      referenceDensity_kg_m3: 1.2041,
      ranges: [{ label: 'only', minimumFlow_m3_h: 10, maximumFlow_m3_h: 50_000 }],
    },
    runs: [runOf('depressurisation'), runOf('pressurisation')],
    target: { preset: 'passive-house-new' },
  }
}

/** The faultless record after a change. */
export function recordWith(change: (record: TestRecord) => void): TestRecord {
  const record = faultlessRecord()
  change(record)
  return record
}

/** A record of one run in reference air: what is evaluated is the readings' own curve, with no correction. */
export function oneRun(
  pressures_Pa: readonly number[],
  flows_m3_h: readonly number[],
  zeroFlow: { before?: number[]; after?: number[] } = {},
): TestRecord {
  return recordWith((record) => {
    delete record.target
    record.runs = [
      {
        direction: (pressures_Pa[0] ?? 0) < 0 ? 'depressurisation' : 'pressurisation',
        zeroFlowBefore_Pa: zeroFlow.before ?? [...NO_ZERO_FLOW],
        zeroFlowAfter_Pa: zeroFlow.after ?? [...NO_ZERO_FLOW],
        readings: pressures_Pa.map((pressure_Pa, i) => ({
          pressure_Pa,
          flow_m3_h: flows_m3_h[i] ?? Number.NaN,
        })),
      },
    ]
  })
}

/** The run and directions of a record, for changes: throws where there is none. */
export function run(record: TestRecord, index = 0): TestRecord['runs'][number] {
  const found = record.runs[index]
  if (!found) throw new Error(`the record has no run ${index}`)
  return found
}
export function reading(
  record: TestRecord,
  index: number,
  of = 0,
): TestRecord['runs'][number]['readings'][number] {
  const found = run(record, of).readings[index]
  if (!found) throw new Error(`the run has no reading ${index}`)
  return found
}
