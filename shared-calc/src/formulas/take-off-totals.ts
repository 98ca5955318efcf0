import { chapter, derived, practice, read } from './chapter.js'

const sums = derived('sum over the parts')
const combined = derived(
  'JCGM 100:2008, 5.1.2 and 5.2.2: parts measured independently, plus a scale error that all lengths share',
)

/** Internal volume on one basis. */
export const volumeTotal = chapter({
  title: 'Internal volume',
  inputs: [
    { symbol: 'V_i', name: 'volume of a space', unit: 'm³', rows: true },
    { symbol: 'u_V', name: 'standard uncertainty of the volume of a space', unit: 'm³', rows: true },
    { symbol: 'b', name: '1 if the space is included on this basis, else 0', unit: '1', rows: true },
    { symbol: 'r_l', name: 'relative standard uncertainty common to all lengths', unit: '1' },
  ],
  formulas: [
    { symbol: 'V', name: 'internal volume', unit: 'm³', expression: 'sum(b .* V_i)', source: sums },
    {
      symbol: 'u_t',
      name: 'standard uncertainty of the internal volume',
      unit: 'm³',
      expression: 'sqrt(sum((b .* u_V) .^ 2) + (3*r_l*V)^2)',
      source: combined,
    },
    {
      symbol: 'u_r',
      name: 'relative standard uncertainty of the internal volume',
      unit: '1',
      expression: 'u_t/V',
      source: combined,
    },
  ],
})

/** Area of the parts that count: floor area, envelope area, or the elements of one kind. */
export const areaTotal = chapter({
  title: 'Area',
  inputs: [
    { symbol: 'A_i', name: 'area of a part', unit: 'm²', rows: true },
    { symbol: 'u_A', name: 'standard uncertainty of the area of a part', unit: 'm²', rows: true },
    { symbol: 'b', name: '1 if the part is included, else 0', unit: '1', rows: true },
    { symbol: 'r_l', name: 'relative standard uncertainty common to all lengths', unit: '1' },
  ],
  formulas: [
    { symbol: 'A_t', name: 'area', unit: 'm²', expression: 'sum(b .* A_i)', source: sums },
    {
      symbol: 'u_t',
      name: 'standard uncertainty of the area',
      unit: 'm²',
      expression: 'sqrt(sum((b .* u_A) .^ 2) + (2*r_l*A_t)^2)',
      source: combined,
    },
  ],
})

/** What the choice of basis does to a result per volume. */
export const basesCompared = chapter({
  title: 'Net and overall internal volume compared',
  inputs: [
    { symbol: 'V_n', name: 'net volume', unit: 'm³' },
    { symbol: 'V_o', name: 'overall internal volume', unit: 'm³' },
  ],
  formulas: [
    {
      symbol: 'd_V',
      name: 'overall internal minus net volume',
      unit: 'm³',
      expression: 'V_o - V_n',
      source: read('definitions of ISO 9972:2015 and EN 13829:2001'),
    },
    {
      symbol: 'r_V',
      name: 'ratio of the air change rates on net and on overall internal volume',
      unit: '1',
      expression: 'V_o/V_n',
      source: derived('n = q/V'),
    },
  ],
})

/** A calculated total compared with the one that a plan states. */
export const statedCompared = chapter({
  title: 'Compared with the stated total',
  inputs: [
    { symbol: 'v_w', name: 'calculated total', unit: 'm³ or m²' },
    { symbol: 'u_w', name: 'its standard uncertainty', unit: 'm³ or m²' },
    { symbol: 'v_s', name: 'stated total', unit: 'm³ or m²' },
  ],
  formulas: [
    {
      symbol: 'd_s',
      name: 'calculated minus stated',
      unit: 'm³ or m²',
      expression: 'v_w - v_s',
      source: practice,
    },
    {
      symbol: 'd_r',
      name: 'difference, share of the stated total',
      unit: '1',
      expression: 'd_s/v_s',
      source: practice,
    },
    {
      symbol: 'U_w',
      name: 'expanded uncertainty of the calculated total (k = 2)',
      unit: 'm³ or m²',
      expression: '2*u_w',
      source: read('JCGM 100:2008, 6.2'),
    },
  ],
})
