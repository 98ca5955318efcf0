import { chapter, derived, read } from './chapter.js'

const air = read('Roulet 2008, eq. 4.17 (Sutherland)')
const astm = read('ASTM E779, form of the correction')

/** The leakage coefficient at reference air, density and viscosity. */
export const standardAirViscous = chapter({
  title: 'Correction to reference air density and viscosity',
  inputs: [
    { symbol: 'C_env', name: 'air flow coefficient', unit: 'm³/(h·Paⁿ)' },
    { symbol: 'C_lo', name: 'air flow coefficient, lower end', unit: 'm³/(h·Paⁿ)' },
    { symbol: 'C_hi', name: 'air flow coefficient, upper end', unit: 'm³/(h·Paⁿ)' },
    { symbol: 'n', name: 'air flow exponent', unit: '1' },
    { symbol: 'rho_x', name: 'density of the air going through the leaks', unit: 'kg/m³' },
    { symbol: 'T_x', name: 'absolute temperature of the air going through the leaks', unit: 'K' },
  ],
  formulas: [
    {
      symbol: 'mu_x',
      name: 'dynamic viscosity of the air going through the leaks',
      unit: 'Pa·s',
      expression: 'b_mu*T_x^1.5/(T_x + S_mu)',
      source: air,
    },
    {
      symbol: 'mu_0',
      name: 'dynamic viscosity of the reference air',
      unit: 'Pa·s',
      expression: 'b_mu*(T_z + theta_0)^1.5/(T_z + theta_0 + S_mu)',
      source: air,
    },
    {
      symbol: 'f_rho',
      name: 'density and viscosity correction',
      unit: '1',
      expression: '(mu_x/mu_0)^(2*n - 1)*(rho_x/rho_0)^(1 - n)',
      source: astm,
    },
    {
      symbol: 'k_n',
      name: 'change of ln of the correction with the exponent',
      unit: '1',
      expression: '2*log(mu_x/mu_0) - log(rho_x/rho_0)',
      source: derived('derivative of the correction'),
    },
    {
      symbol: 'k_T',
      name: 'change of ln of the viscosity correction with the temperature',
      unit: '1/K',
      expression: '(2*n - 1)*(1.5/T_x - 1/(T_x + S_mu))',
      source: derived('derivative of the correction'),
    },
    {
      symbol: 'C_L',
      name: 'air leakage coefficient',
      unit: 'm³/(h·Paⁿ)',
      expression: 'C_env*f_rho',
      source: astm,
    },
    {
      symbol: 'C_L_lo',
      name: 'air leakage coefficient, lower end',
      unit: 'm³/(h·Paⁿ)',
      expression: 'C_lo*f_rho',
      source: astm,
    },
    {
      symbol: 'C_L_hi',
      name: 'air leakage coefficient, upper end',
      unit: 'm³/(h·Paⁿ)',
      expression: 'C_hi*f_rho',
      source: astm,
    },
  ],
})
