import { chapter, derived } from './chapter.js'

const gas = derived('ideal gas at one pressure: volumes as absolute temperatures')

/** A flow stated for air at 0 °C ("normal" flow) as a flow of reference air at the same pressure. */
export const normalFlow = chapter({
  title: 'Flow of air at 0 °C as a flow of reference air',
  inputs: [
    { symbol: 'q_N', name: 'air flow stated for air at 0 °C', unit: 'm³/h' },
    { symbol: 'theta_r', name: 'temperature of the reference air', unit: '°C' },
  ],
  formulas: [
    {
      symbol: 'f_N',
      name: 'volume at the reference temperature for each at 0 °C',
      unit: '1',
      expression: '(theta_r + T_z)/T_z',
      source: gas,
    },
    {
      symbol: 'q_r',
      name: 'air flow as reference air',
      unit: 'm³/h',
      expression: 'q_N*f_N',
      source: gas,
    },
  ],
})
