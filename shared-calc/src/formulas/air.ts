import { chapter, definition, derived, read } from './chapter.js'

/** Density of moist air. */
export const moistAir = chapter({
  title: 'Density of moist air',
  inputs: [
    { symbol: 'theta', name: 'air temperature', unit: '°C' },
    { symbol: 'phi', name: 'relative humidity', unit: '1' },
    { symbol: 'p_bar', name: 'barometric pressure', unit: 'Pa' },
  ],
  formulas: [
    {
      symbol: 'T',
      name: 'absolute temperature',
      unit: 'K',
      expression: 'theta + T_z',
      source: definition('definition of the kelvin scale'),
    },
    {
      symbol: 'p_v',
      name: 'partial pressure of water vapour',
      unit: 'Pa',
      expression: 'phi*exp(a_v - b_v/T - c_v*log(T))',
      source: read('UK technical standard on EN 13829 (2010)'),
    },
    {
      symbol: 'rho',
      name: 'air density',
      unit: 'kg/m³',
      expression: '(p_bar - k_v*p_v)/(R_d*T)',
      source: derived('ideal gas law for dry air and vapour; ISO 9972:2015, Annex A'),
    },
  ],
})

/** Barometric pressure of the standard atmosphere, for sites where no barometer was read. */
export const standardAtmosphere = chapter({
  title: 'Barometric pressure from altitude',
  inputs: [{ symbol: 'h', name: 'altitude of the site', unit: 'm' }],
  formulas: [
    {
      symbol: 'p_h',
      name: 'barometric pressure of the standard atmosphere',
      unit: 'Pa',
      expression: 'p_0*(1 - a_h*h)^b_h',
      source: read('US Standard Atmosphere 1976; ASHRAE Fundamentals 2017 ch. 1'),
    },
  ],
})
