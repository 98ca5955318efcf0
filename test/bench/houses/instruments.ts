import type { TestRecord } from '@draughtbook/shared-calc'

/** Standard uncertainties of what a tester brings, and how the record tells them. */
export interface Instruments {
  readonly flowCalibration: number
  readonly flowReading: number
  readonly gaugeSpan: number
  readonly gaugeOffset_Pa: number
  readonly pressureReading_Pa: number
  readonly temperature_K: number
  readonly barometer_Pa: number
  readonly volume: number
  readonly told: NonNullable<TestRecord['uncertainty']>
}

/** What is taken where a record says nothing; retyped from the published list of defaults, which the record leaves to it. */
export const usual: Instruments = {
  flowCalibration: 0.05 / Math.sqrt(3),
  flowReading: 0.005,
  gaugeSpan: 0.01 / Math.sqrt(3),
  gaugeOffset_Pa: 0.3,
  pressureReading_Pa: 0.1,
  temperature_K: 0.5 / Math.sqrt(3),
  barometer_Pa: 100,
  volume: 0.02,
  told: {},
}

/** A freshly calibrated device and gauge, whose certificates the record tells. */
export const precise: Instruments = {
  flowCalibration: 0.0075,
  flowReading: 0.002,
  gaugeSpan: 0.002,
  gaugeOffset_Pa: 0.1,
  pressureReading_Pa: 0.03,
  temperature_K: 0.2,
  barometer_Pa: 50,
  volume: 0.01,
  told: {
    flowCalibration_relative: 0.0075,
    flowReading_relative: 0.002,
    gaugeSpan_relative: 0.002,
    pressureReading_Pa: 0.03,
    zeroFlow_Pa: 0.01,
    indoorTemperature_K: 0.2,
    outdoorTemperature_K: 0.2,
    barometricPressure_Pa: 50,
    volume_relative: 0.01,
  },
}
