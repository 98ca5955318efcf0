import { z } from 'zod'
import { numberField } from './number-field.js'

const relative = (term: string, maximum = 1) => numberField({ term, unit: '1' }, 0, maximum).optional()

/**
 * What the tester knows about the uncertainty of the test's inputs: standard uncertainties (k = 1), relative ones as a
 * fraction. Everything left out takes a published default, and a note says so.
 */
export const UncertaintyInputs = z.strictObject({
  flowCalibration_relative: relative('standard uncertainty of the flow calibration'),
  /** Of one range of the flow device against another (from record@3 on). */
  rangeStep_relative: relative('standard uncertainty of a step between the ranges of the flow device'),
  flowReading_relative: relative('standard uncertainty of one flow reading'),
  gaugeSpan_relative: relative('standard uncertainty of the pressure gauge'),
  pressureReading_Pa: numberField(
    { term: 'standard uncertainty of one pressure reading', unit: 'Pa' },
    0,
    50,
  ).optional(),
  zeroFlow_Pa: numberField(
    { term: 'additional standard uncertainty of the zero-flow pressure', unit: 'Pa' },
    0,
    50,
  ).optional(),
  windShift: relative('wind: shift of the mean pressure, as a share of the dynamic pressure'),
  windSpread: relative(
    'wind: spread of the pressure around the envelope, as a share of the dynamic pressure',
  ),
  stackShift: relative('stack: shift of the effective zero, share of the stack pressure'),
  stackSpread: relative('stack: variance over the openings, share of the square of the stack pressure'),
  leakExponentSpread: relative("standard deviation of the openings' exponents", 0.25),
  zeroFlowWind: relative('variation of the zero-flow pressure in wind, share of the dynamic pressure'),
  indoorTemperature_K: numberField(
    { term: 'standard uncertainty of the indoor temperature', unit: 'K' },
    0,
    20,
  ).optional(),
  outdoorTemperature_K: numberField(
    { term: 'standard uncertainty of the outdoor temperature', unit: 'K' },
    0,
    20,
  ).optional(),
  barometricPressure_Pa: numberField(
    { term: 'standard uncertainty of the barometric pressure', unit: 'Pa' },
    0,
    10_000,
  ).optional(),
  relativeHumidity: relative('standard uncertainty of the relative humidity'),
  volume_relative: relative('relative standard uncertainty of the internal volume'),
  envelopeArea_relative: relative('relative standard uncertainty of the envelope area'),
  floorArea_relative: relative('relative standard uncertainty of the floor area'),
  assumedExponent: relative('standard uncertainty of an assumed air flow exponent', 0.5),
  otherDirection_relative: relative('standard uncertainty for the direction that was not measured'),
  /** Largest probability of accepting a building that does not meet its target. */
  acceptedRisk: numberField({ term: 'accepted risk', unit: '1' }, 0.0001, 0.5).optional(),
})
export type UncertaintyInputs = z.infer<typeof UncertaintyInputs>
