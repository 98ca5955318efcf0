import { chapter, derived, practice, read } from './chapter.js'

/** A value compared with its limit. */
export const comparison = chapter({
  title: 'Against the target',
  inputs: [
    { symbol: 'v', name: 'value compared with the limit', unit: 'as the target' },
    { symbol: 'L', name: 'limit', unit: 'as the target' },
  ],
  formulas: [
    {
      symbol: 'M',
      name: 'margin to the limit',
      unit: 'as the target',
      expression: 'L - v',
      source: practice,
    },
    { symbol: 'M_L', name: 'margin as a share of the limit', unit: '1', expression: 'M/L', source: practice },
  ],
})

/** A value rounded first, where the target says so. */
export const roundedValue = chapter({
  title: 'Rounding asked for by the target',
  inputs: [
    { symbol: 'v_u', name: 'value before rounding', unit: 'as the target' },
    { symbol: 'k', name: 'decimal places', unit: '1' },
  ],
  formulas: [
    {
      symbol: 'v',
      name: 'value compared with the limit',
      unit: 'as the target',
      expression: 'round(v_u, k)',
      source: practice,
    },
  ],
})

/** The value after leakage has grown with age. */
export const ageing = chapter({
  title: 'After ageing',
  inputs: [
    { symbol: 'v', name: 'value compared with the limit', unit: 'as the target' },
    { symbol: 'L', name: 'limit', unit: 'as the target' },
    { symbol: 'g', name: 'growth of leakage', unit: '1' },
  ],
  formulas: [
    {
      symbol: 'v_g',
      name: 'value after ageing',
      unit: 'as the target',
      expression: 'v*(1 + g)',
      source: read('Moujalled et al. 2021 (+18 %); Ismaiel et al. 2022 (+25 %)'),
    },
    {
      symbol: 'M_g',
      name: 'margin after ageing',
      unit: 'as the target',
      expression: 'L - v_g',
      source: practice,
    },
  ],
})

/** The sharp-edged hole that carries what is above the limit, at the target's reference pressure; 0 when the target is met. */
export const leakageToSeal = chapter({
  title: 'Leakage to seal',
  inputs: [
    { symbol: 'v', name: 'value compared with the limit', unit: 'as the target' },
    { symbol: 'L', name: 'limit', unit: 'as the target' },
    { symbol: 'B', name: 'basis of the target (volume or area; 1 for a flow)', unit: 'm³ or m²' },
    { symbol: 'dp_r', name: 'reference pressure difference', unit: 'Pa' },
  ],
  formulas: [
    {
      symbol: 'q_s',
      name: 'air flow above the limit',
      unit: 'm³/h',
      expression: 'max(0, v - L)*B',
      source: derived('excess over the limit'),
    },
    {
      symbol: 'A_s',
      name: 'area of a sharp-edged hole to close',
      unit: 'cm²',
      expression: 'u_A*q_s/(s_h*C_o*sqrt(2*dp_r/rho_0))',
      source: derived('orifice law q = C·A·√(2Δp/ρ)'),
    },
  ],
})
