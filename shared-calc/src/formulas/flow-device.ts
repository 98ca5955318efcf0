import { chapter, definition, memory } from './chapter.js'

/** Flow through a device from the pressure it shows, at the density of the air in it. */
export const flowDevice = chapter({
  title: 'Flow through the device',
  inputs: [
    { symbol: 'dp_d', name: 'device pressure', unit: 'Pa', rows: true },
    { symbol: 'c_d', name: 'coefficient of the range', unit: 'm³/(h·Paᵐ)', rows: true },
    { symbol: 'm_d', name: 'exponent of the range', unit: '1', rows: true },
    { symbol: 'rho_cal', name: 'reference density of the device', unit: 'kg/m³' },
    { symbol: 'rho_d', name: 'density of the air in the device', unit: 'kg/m³' },
  ],
  formulas: [
    {
      symbol: 'q_d',
      name: 'measured air flow, from the device pressure',
      unit: 'm³/h',
      expression: 'c_d .* abs(dp_d) .^ m_d * sqrt(rho_cal/rho_d)',
      source: memory('square-root law of a throttling device; ISO 9972:2015'),
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
