import { chapter, derived, read } from './chapter.js'

/** Temperature difference times height, the measure of stack pressure that methods limit. */
export const stackMeasure = chapter({
  title: 'Temperature difference times height',
  inputs: [
    { symbol: 'h_b', name: 'building height', unit: 'm' },
    { symbol: 'theta_i', name: 'indoor temperature', unit: '°C' },
    { symbol: 'theta_e', name: 'outdoor temperature', unit: '°C' },
  ],
  formulas: [
    {
      symbol: 'h_T',
      name: 'height times temperature difference',
      unit: 'm·K',
      expression: 'h_b*abs(theta_i - theta_e)',
      source: read('ASTM E779-03, 8.4, as printed in a US Army protocol'),
    },
  ],
})

/** The lowest pressure difference at which a reading still stands clear of the zero-flow pressure. */
export const lowestPressure = chapter({
  title: 'Lowest pressure to use',
  inputs: [
    { symbol: 'dp_floor', name: 'lowest pressure difference of the method', unit: 'Pa' },
    { symbol: 'k_z', name: 'multiple of the zero-flow pressure', unit: '1' },
    { symbol: 'dp_s', name: 'signed means of the zero-flow pressure', unit: 'Pa', rows: true },
  ],
  formulas: [
    {
      symbol: 'dp_high',
      name: 'largest signed mean of the zero-flow pressure',
      unit: 'Pa',
      expression: 'max(max(dp_s), 0 - min(dp_s))',
      source: read('ISO 9972:2015, 5.3.4, as restated in a Danish conference paper of 2019'),
    },
    {
      symbol: 'dp_min',
      name: 'lowest usable pressure difference',
      unit: 'Pa',
      expression: 'max(dp_floor, k_z*dp_high)',
      source: read('ISO 9972:2015, 5.3.4, as restated in a Danish conference paper of 2019'),
    },
  ],
})

/** How volume, envelope area and floor area fit each other. */
export const buildingShape = chapter({
  title: 'Shape of the building',
  inputs: [
    { symbol: 'V', name: 'internal volume', unit: 'm³' },
    { symbol: 'A_F', name: 'floor area', unit: 'm²' },
  ],
  formulas: [
    {
      symbol: 'A_min',
      name: 'smallest area that encloses the volume',
      unit: 'm²',
      expression: '(36*pi)^(1/3)*V^(2/3)',
      source: derived('surface of a sphere: no other shape encloses a volume with less area'),
    },
    {
      symbol: 'h_m',
      name: 'mean height of the storeys',
      unit: 'm',
      expression: 'V/A_F',
      source: derived('definition of a mean height'),
    },
  ],
})
