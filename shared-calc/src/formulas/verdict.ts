import { chapter, derived, memory, practice, read } from './chapter.js'

const asTarget = 'as the target'

/** Area of the sharp-edged hole that carries a flow at the reference pressure, by the orifice law q = C·A·√(2Δp/ρ). */
export const holeFor = (flow: string): string => `u_A*${flow}/(s_h*C_o*sqrt(2*dp_r/rho_0))`
/** Air flow through an area at the reference pressure difference, m³/h. */
const flowThrough = (area: string): string => `s_h*C_g*sqrt(2*dp_r/rho_0)*${area}/u_A`

/** A value compared with its limit. */
export const comparison = chapter({
  title: 'Against the target',
  inputs: [
    { symbol: 'v', name: 'value compared with the limit', unit: asTarget },
    { symbol: 'L', name: 'limit', unit: asTarget },
  ],
  formulas: [
    {
      symbol: 'M',
      name: 'margin to the limit',
      unit: asTarget,
      expression: 'L - to_limit(v, L)',
      source: derived('equal within 1e-9 of the limit counts as equal'),
    },
    { symbol: 'M_L', name: 'margin as a share of the limit', unit: '1', expression: 'M/L', source: practice },
  ],
})

/** A value that stands for buildings that were not tested is multiplied by the factor of the scheme. */
export const sampledValue = chapter({
  title: 'Sample of several buildings',
  inputs: [
    { symbol: 'v_u', name: 'value of the tested buildings', unit: asTarget },
    { symbol: 'k_s', name: 'factor of the scheme for a sample', unit: '1' },
  ],
  formulas: [
    {
      symbol: 'v',
      name: 'value compared with the limit',
      unit: asTarget,
      expression: 'k_s*v_u',
      source: read('French trade pages on RE2020: 1.2 times the weighted mean'),
    },
  ],
})

/** A one-point result that is compared with a limit is increased first. */
export const extendedValue = chapter({
  title: 'Extended for the comparison with a limit',
  inputs: [{ symbol: 'v_u', name: 'value before the extension', unit: asTarget }],
  formulas: [
    {
      symbol: 'v',
      name: 'value compared with the limit',
      unit: asTarget,
      expression: 'k_ext*v_u',
      source: memory('ANSI/RESNET/ICC 380: the extended result is compared with the limit'),
    },
  ],
})

/** The largest value of the places that a target rounds to that still meets its limit. */
export const limitOfPlaces = chapter({
  title: 'Limit to the places of the target',
  inputs: [
    { symbol: 'L', name: 'limit', unit: asTarget },
    { symbol: 'k', name: 'decimal places', unit: '1' },
  ],
  formulas: [
    {
      symbol: 'L_k',
      name: 'largest rounded value that meets the limit',
      unit: asTarget,
      expression: 'floor(L*10^k*(1 + 1e-9))/10^k',
      source: derived('equal within 1e-9 of the limit counts as equal'),
    },
  ],
})

/** The largest value that meets the limit, before factors and rounding: what probabilities are worked out against. */
export const limitBefore = chapter({
  title: 'Limit before factors and rounding',
  inputs: [
    { symbol: 'L', name: 'limit', unit: asTarget },
    { symbol: 'h_k', name: 'half of the last place to which the target rounds', unit: asTarget },
    { symbol: 'k_v', name: 'factor on the value', unit: '1' },
  ],
  formulas: [
    {
      symbol: 'L_m',
      name: 'limit of the value before factors and rounding',
      unit: asTarget,
      expression: '(L + h_k)/k_v',
      source: derived('rounding half away from zero'),
    },
  ],
})

/** A value rounded first, where the target says so. */
export const roundedValue = chapter({
  title: 'Rounding required by the target',
  inputs: [
    { symbol: 'v_u', name: 'value before rounding', unit: asTarget },
    { symbol: 'k', name: 'decimal places', unit: '1' },
  ],
  formulas: [
    {
      symbol: 'v',
      name: 'value compared with the limit',
      unit: asTarget,
      expression: 'round(v_u, k)',
      source: practice,
    },
  ],
})

/** The value after leakage has grown with age. */
export const ageing = chapter({
  title: 'After ageing',
  inputs: [
    { symbol: 'v', name: 'value compared with the limit', unit: asTarget },
    { symbol: 'L', name: 'limit', unit: asTarget },
    { symbol: 'g', name: 'growth of leakage', unit: '1' },
  ],
  formulas: [
    {
      symbol: 'v_g',
      name: 'value after ageing',
      unit: asTarget,
      expression: 'v*(1 + g)',
      source: read('Moujalled et al. 2021 (+18 %); Ismaiel et al. 2022 (+25 %)'),
    },
    {
      symbol: 'M_g',
      name: 'margin after ageing',
      unit: asTarget,
      expression: 'L - to_limit(v_g, L)',
      source: derived('equal within 1e-9 of the limit counts as equal'),
    },
  ],
})

/** The air leakage rate of a building whose leakage area just meets its limit. */
export const flowThroughAllowedArea = chapter({
  title: 'Leakage that just meets the target, by its area',
  inputs: [
    { symbol: 'L', name: 'limit', unit: asTarget },
    { symbol: 'B', name: 'area the target is based on', unit: 'm²' },
    { symbol: 'dp_r', name: 'reference pressure difference', unit: 'Pa' },
  ],
  formulas: [
    {
      symbol: 'q_t',
      name: 'air leakage rate that just meets the target',
      unit: 'm³/h',
      expression: flowThrough('L*B'),
      source: derived('orifice law q = C·A·√(2Δp/ρ)'),
    },
  ],
})

/** The area of sharp-edged holes above the limit, where the target limits an area; 0 when it is met. */
export const areaToSeal = chapter({
  title: 'Leakage area to seal',
  inputs: [
    { symbol: 'v', name: 'value compared with the limit', unit: asTarget },
    { symbol: 'L', name: 'limit', unit: asTarget },
    { symbol: 'B', name: 'area the target is based on', unit: 'm²' },
    { symbol: 'dp_r', name: 'reference pressure difference', unit: 'Pa' },
  ],
  formulas: [
    {
      symbol: 'A_s',
      name: 'area of a sharp-edged hole to close',
      unit: 'cm²',
      expression: 'max(0, to_limit(v, L) - L)*B',
      source: derived('excess over the limit'),
    },
    {
      symbol: 'q_s',
      name: 'air flow through that hole',
      unit: 'm³/h',
      expression: flowThrough('A_s'),
      source: derived('orifice law q = C·A·√(2Δp/ρ)'),
    },
  ],
})

/** The sharp-edged hole that carries what is above the limit, at the target's reference pressure; 0 when the target is met. */
export const leakageToSeal = chapter({
  title: 'Leakage to seal',
  inputs: [
    { symbol: 'v', name: 'value compared with the limit', unit: asTarget },
    { symbol: 'L', name: 'limit', unit: asTarget },
    { symbol: 'B', name: 'basis of the target (volume or area; 1 for a flow)', unit: 'm³ or m²' },
    { symbol: 'dp_r', name: 'reference pressure difference', unit: 'Pa' },
  ],
  formulas: [
    {
      symbol: 'q_s',
      name: 'air flow above the limit',
      unit: 'm³/h',
      expression: 'max(0, to_limit(v, L) - L)*B',
      source: derived('excess over the limit'),
    },
    {
      symbol: 'A_s',
      name: 'area of a sharp-edged hole to close',
      unit: 'cm²',
      expression: holeFor('q_s'),
      source: derived('orifice law q = C·A·√(2Δp/ρ)'),
    },
  ],
})
