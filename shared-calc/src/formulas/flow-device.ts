import { deviceLaw } from '../catalogue/sources.js'
import type { Chapter } from '../engine/index.js'
import { chapter, definition, derived } from './chapter.js'

const pressureInputs = [
  { symbol: 'dp_d', name: 'device pressure', unit: 'Pa', rows: true },
  { symbol: 'c_d', name: 'coefficient of the range', unit: 'm³/(h·Paᵐ)', rows: true },
  { symbol: 'm_d', name: 'exponent of the range', unit: '1', rows: true },
] as const

const densities = [
  { symbol: 'rho_cal', name: 'reference density of the device', unit: 'kg/m³' },
  { symbol: 'rho_d', name: 'density of the air in the device', unit: 'kg/m³' },
] as const

const shownFlow = { symbol: 'q_s', name: 'air flow as typed', unit: 'm³/h', rows: true } as const

/**
 * Flow through a device from the pressure it shows, at the density of the air in it. A throttling device shows a pressure
 * proportional to ρ·v²/2: at equal pressure, flows are inversely proportional to √ρ.
 */
export const flowDevice = chapter({
  title: 'Flow through the device',
  inputs: [...pressureInputs, ...densities],
  formulas: [
    {
      symbol: 'q_d',
      name: 'measured air flow, from the device pressure',
      unit: 'm³/h',
      expression: 'c_d .* abs(dp_d) .^ m_d * sqrt(rho_cal/rho_d)',
      source: deviceLaw,
    },
  ],
})

/** The flow of standard air that shows the same device pressure, for methods whose factors start from it. */
export const flowDeviceStandard = chapter({
  title: 'Flow of standard air for the device pressure',
  inputs: [...pressureInputs, densities[0]],
  formulas: [
    {
      symbol: 'q_d',
      name: 'flow of standard air for the device pressure',
      unit: 'm³/h',
      expression: 'c_d .* abs(dp_d) .^ m_d * sqrt(rho_cal/rho_0)',
      source: deviceLaw,
    },
  ],
})

const typed = (
  title: string,
  name: string,
  expression: string,
  inputs: readonly (typeof densities)[number][],
): Chapter =>
  chapter({
    title,
    inputs: [shownFlow, ...inputs],
    formulas: [{ symbol: 'q_t', name, unit: 'm³/h', expression, source: deviceLaw }],
  })

/** The flow through a device that shows it for air of its reference density. */
export const fromReferenceAir = typed(
  'Flow through the device, typed for reference air',
  'air flow through the device',
  'q_s*sqrt(rho_cal/rho_d)',
  densities,
)

/** The flow of standard air that would show the same, from a flow for the reference air of the device. */
export const standardFromReferenceAir = typed(
  'Flow of standard air, typed for reference air',
  'flow of standard air that gives the same display',
  'q_s*sqrt(rho_cal/rho_0)',
  [densities[0]],
)

/** The flow of standard air that would show the same, from the flow through the device. */
export const standardFromDeviceAir = typed(
  'Flow of standard air, typed for the air in the device',
  'flow of standard air that gives the same display',
  'q_s*sqrt(rho_d/rho_0)',
  [densities[1]],
)

/** How much the leakage rates change if the typed flows are for the other air: every flow has the same factor. */
export const statedAir = chapter({
  title: 'Air the typed flows are stated for',
  inputs: [...densities],
  formulas: [
    {
      symbol: 'f_r',
      name: 'change of the leakage rates if the flows are for reference air',
      unit: '1',
      expression: 'sqrt(rho_cal/rho_d) - 1',
      source: derived('all flows multiplied by the same factor'),
    },
    {
      symbol: 'f_a',
      name: 'change of the leakage rates if the flows are for the air in the device',
      unit: '1',
      expression: 'sqrt(rho_d/rho_0) - 1',
      source: derived('all flows multiplied by the same factor'),
    },
  ],
})

/** Devices running together: their flows add up. */
export const severalDevices = chapter({
  title: 'Flow of several devices',
  inputs: [{ symbol: 'q_j', name: 'measured air flow of one device', unit: 'm³/h', rows: true }],
  formulas: [
    {
      symbol: 'q_m',
      name: 'measured air flow of all devices',
      unit: 'm³/h',
      expression: 'sum(q_j)',
      source: definition('flows of devices running in parallel add up'),
    },
  ],
})
