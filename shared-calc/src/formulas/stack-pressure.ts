import { chapter, read } from './chapter.js'

const hydrostatic = read('hydrostatics of two columns of air; ASHRAE Fundamentals 2017, ch. 16')

/** Pressure difference that warm air inside builds up over the height of a building. */
export const stackPressure = chapter({
  title: 'Stack pressure',
  inputs: [
    { symbol: 'h_b', name: 'building height', unit: 'm' },
    { symbol: 'rho_i', name: 'air density indoors', unit: 'kg/m³' },
    { symbol: 'rho_e', name: 'air density outdoors', unit: 'kg/m³' },
  ],
  formulas: [
    {
      symbol: 'dp_st',
      name: 'stack pressure over the height of the building',
      unit: 'Pa',
      expression: 'g_n*h_b*(rho_e - rho_i)',
      source: hydrostatic,
    },
    {
      symbol: 'dp_foot',
      name: 'inside minus outside at the foot, with the neutral level at half height',
      unit: 'Pa',
      expression: '-(dp_st/2)',
      source: hydrostatic,
    },
  ],
})
