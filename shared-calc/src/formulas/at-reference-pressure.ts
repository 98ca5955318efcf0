import type { Formula, Input } from '../engine/index.js'
import { chapter, definition, memory, read } from './chapter.js'

const annex = read('ISO 9972:2015 Annex C; Roulet 2008, eq. 7.13–7.21')

const given: readonly Input[] = [
  { symbol: 'dp_r', name: 'reference pressure difference', unit: 'Pa' },
  { symbol: 'C_L', name: 'air leakage coefficient', unit: 'm³/(h·Paⁿ)' },
  { symbol: 'n', name: 'air flow exponent', unit: '1' },
  { symbol: 'N', name: 'number of readings', unit: '1' },
  { symbol: 'xbar', name: 'mean of x', unit: '1' },
  { symbol: 'S_xx', name: 'variance of x', unit: '1' },
  { symbol: 'S_n', name: 'standard error of the exponent', unit: '1' },
  { symbol: 't_95', name: 'Student t for a 95 % interval', unit: '1' },
]

const rateWithScatter: readonly Formula[] = [
  {
    symbol: 'q_pr',
    name: 'air leakage rate',
    unit: 'm³/h',
    expression: 'C_L*dp_r^n',
    source: definition('power law of the leakage curve'),
  },
  {
    symbol: 'S_y',
    name: 'standard error of ln q at the reference pressure',
    unit: '1',
    expression: 'S_n*sqrt(((N - 1)/N)*S_xx + (log(dp_r) - xbar)^2)',
    source: annex,
  },
  {
    symbol: 'q_lo',
    name: 'air leakage rate, lower end',
    unit: 'm³/h',
    expression: 'q_pr*exp(-(t_95*S_y))',
    source: annex,
  },
  {
    symbol: 'q_hi',
    name: 'air leakage rate, upper end',
    unit: 'm³/h',
    expression: 'q_pr*exp(t_95*S_y)',
    source: annex,
  },
]

const areaEnds: readonly Formula[] = [
  {
    symbol: 'A_L_lo',
    name: 'leakage area, lower end',
    unit: 'cm²',
    expression: 'A_L*exp(-(t_95*S_y))',
    source: annex,
  },
  {
    symbol: 'A_L_hi',
    name: 'leakage area, upper end',
    unit: 'cm²',
    expression: 'A_L*exp(t_95*S_y)',
    source: annex,
  },
]

/** Air leakage rate and effective leakage area of one run at one reference pressure, with the scatter of the fit there. */
export const atReferencePressure = chapter({
  title: 'At a reference pressure',
  inputs: given,
  formulas: [
    ...rateWithScatter,
    {
      symbol: 'A_L',
      name: 'effective leakage area',
      unit: 'cm²',
      expression: 'u_A*(1/s_h)*C_L*(rho_0/2)^0.5*dp_r^(n - 0.5)',
      source: read(
        'effective leakage area with a discharge coefficient of 1: Modelica Buildings library; ISO 9972:2015, 6.3.5',
      ),
    },
    ...areaEnds,
  ],
})

/** The same with the equivalent leakage area: that of a sharp-edged hole. */
export const atReferencePressureHole = chapter({
  title: 'At a reference pressure, equivalent leakage area',
  inputs: given,
  formulas: [
    ...rateWithScatter,
    {
      symbol: 'A_L',
      name: 'equivalent leakage area',
      unit: 'cm²',
      expression: 'u_A*(1/s_h)/C_g*C_L*(rho_0/2)^0.5*dp_r^(n - 0.5)',
      source: memory('CAN/CGSB-149.10'),
    },
    ...areaEnds,
  ],
})
