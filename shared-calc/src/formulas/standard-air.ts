import { chapter, read } from './chapter.js'

/** The density part of the correction; ISO 9972:2015, 6.2, leaves out the viscosity (from memory). */
const clause = read('Roulet 2008, eq. 4.15–4.18, density part')

/** The leakage coefficient at reference air density. */
export const standardAir = chapter({
  title: 'Correction to reference air density',
  inputs: [
    { symbol: 'C_env', name: 'air flow coefficient', unit: 'm³/(h·Paⁿ)' },
    { symbol: 'C_lo', name: 'air flow coefficient, lower end', unit: 'm³/(h·Paⁿ)' },
    { symbol: 'C_hi', name: 'air flow coefficient, upper end', unit: 'm³/(h·Paⁿ)' },
    { symbol: 'n', name: 'air flow exponent', unit: '1' },
    { symbol: 'rho_x', name: 'density of the air going through the leaks', unit: 'kg/m³' },
  ],
  formulas: [
    {
      symbol: 'f_rho',
      name: 'density correction',
      unit: '1',
      expression: '(rho_x/rho_0)^(1 - n)',
      source: clause,
    },
    {
      symbol: 'C_L',
      name: 'air leakage coefficient',
      unit: 'm³/(h·Paⁿ)',
      expression: 'C_env*f_rho',
      source: clause,
    },
    {
      symbol: 'C_L_lo',
      name: 'air leakage coefficient, lower end',
      unit: 'm³/(h·Paⁿ)',
      expression: 'C_lo*f_rho',
      source: clause,
    },
    {
      symbol: 'C_L_hi',
      name: 'air leakage coefficient, upper end',
      unit: 'm³/(h·Paⁿ)',
      expression: 'C_hi*f_rho',
      source: clause,
    },
  ],
})
