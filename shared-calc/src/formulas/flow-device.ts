import { chapter, definition, derived, read } from './chapter.js'

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

/** A throttling device shows a pressure that goes with ρ·v²/2, so that equal pressures are flows in inverse ratio to √ρ. */
const squareRoot = read('square-root law of a throttling device: encyclopedia text "Air density corrections"')

/** Flow through a device from the pressure it shows, at the density of the air in it. */
export const flowDevice = chapter({
  title: 'Flow through the device',
  inputs: [...pressureInputs, ...densities],
  formulas: [
    {
      symbol: 'q_d',
      name: 'measured air flow, from the device pressure',
      unit: 'm³/h',
      expression: 'c_d .* abs(dp_d) .^ m_d * sqrt(rho_cal/rho_d)',
      source: squareRoot,
    },
  ],
})

/** The flow that a device shows for its pressure when it is told no density: that of air of its reference density. */
export const flowDeviceNominal = chapter({
  title: 'Flow as the device shows it for reference air',
  inputs: pressureInputs,
  formulas: [
    {
      symbol: 'q_d',
      name: 'air flow for reference air, from the device pressure',
      unit: 'm³/h',
      expression: 'c_d .* abs(dp_d) .^ m_d',
      source: definition('calibrated range of the device'),
    },
  ],
})

/** The flow through a device that shows it for air of its reference density. */
export const fromReferenceAir = chapter({
  title: 'Flow through the device, shown for reference air',
  inputs: [shownFlow, ...densities],
  formulas: [
    {
      symbol: 'q_t',
      name: 'air flow through the device',
      unit: 'm³/h',
      expression: 'q_s*sqrt(rho_cal/rho_d)',
      source: squareRoot,
    },
  ],
})

/** The flow that a device would show for reference air, from the flow that passed it. */
export const toReferenceAir = chapter({
  title: 'Flow for reference air, from the flow through the device',
  inputs: [shownFlow, ...densities],
  formulas: [
    {
      symbol: 'q_t',
      name: 'air flow for reference air',
      unit: 'm³/h',
      expression: 'q_s*sqrt(rho_d/rho_cal)',
      source: squareRoot,
    },
  ],
})

/** How much the leakage rates depend on what the typed flows are flows of: every flow has the same factor. */
export const statedAir = chapter({
  title: 'What the typed flows are flows of',
  inputs: [...densities],
  formulas: [
    {
      symbol: 'f_r',
      name: 'change of the leakage rates if the flows are for reference air, not of the air in the device',
      unit: '1',
      expression: 'sqrt(rho_cal/rho_d) - 1',
      source: derived('all flows multiplied by the same factor'),
    },
    {
      symbol: 'f_a',
      name: 'change of the leakage rates if the flows are of the air in the device, not for reference air',
      unit: '1',
      expression: 'sqrt(rho_d/rho_cal) - 1',
      source: derived('all flows multiplied by the same factor'),
    },
  ],
})

/** Devices running together: what they move adds. */
export const severalDevices = chapter({
  title: 'Flow of several devices',
  inputs: [{ symbol: 'q_j', name: 'measured air flow of one device', unit: 'm³/h', rows: true }],
  formulas: [
    {
      symbol: 'q_m',
      name: 'measured air flow of all devices',
      unit: 'm³/h',
      expression: 'sum(q_j)',
      source: definition('flows through devices side by side add'),
    },
  ],
})
