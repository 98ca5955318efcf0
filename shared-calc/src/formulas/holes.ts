import type { Input } from '../engine/index.js'
import { chapter, definition, derived, practice } from './chapter.js'

const geometry = definition('elementary geometry')
const column = (symbol: string, name: string, unit: string): Input => ({ symbol, name, unit, rows: true })
const number = column('z', 'number of them', '1')
const area = (expression: string) => ({
  symbol: 'A_h',
  name: 'area of the holes',
  unit: 'cm²',
  expression,
  source: geometry,
})

/** Round holes by their diameter. */
export const roundHoles = chapter({
  title: 'Round holes',
  inputs: [number, column('d_h', 'diameter', 'mm')],
  formulas: [area('u_A*pi*z .* (d_h/u_m) .^ 2/4')],
})

/** Gaps by width and length. */
export const gaps = chapter({
  title: 'Gaps',
  inputs: [number, column('w_g', 'width', 'mm'), column('l_g', 'length', 'm')],
  formulas: [area('u_A*z .* (w_g/u_m) .* l_g')],
})

/** Holes whose area was estimated. */
export const estimatedHoles = chapter({
  title: 'Areas as estimated',
  inputs: [number, column('A_e', 'area of one', 'cm²')],
  formulas: [area('z .* A_e')],
})

/** Flow that logged holes of known area would carry if they were sharp-edged. */
export const flowThroughHoles = chapter({
  title: 'Flow through the holes',
  inputs: [
    column('A_h', 'area of the holes', 'cm²'),
    { symbol: 'dp_r', name: 'reference pressure difference', unit: 'Pa' },
    { symbol: 'A_q', name: 'sharp-edged hole equivalent to the total leakage', unit: 'cm²' },
  ],
  formulas: [
    {
      symbol: 'q_h',
      name: 'air flow through the holes',
      unit: 'm³/h',
      expression: 's_h*C_o*sqrt(2*dp_r/rho_0)*A_h/u_A',
      source: derived('orifice law q = C·A·√(2Δp/ρ)'),
    },
    {
      symbol: 's_A',
      name: 'share of the total leakage',
      unit: '1',
      expression: 'A_h/A_q',
      source: derived('equal pressure across all holes'),
    },
    {
      symbol: 'A_sum',
      name: 'area of all holes logged',
      unit: 'cm²',
      expression: 'sum(A_h)',
      source: geometry,
    },
    {
      symbol: 's_sum',
      name: 'share of the total leakage that is logged',
      unit: '1',
      expression: 'A_sum/A_q',
      source: derived('equal pressure across all holes'),
    },
  ],
})

/** An area as one square or one round hole, to picture it. */
export const holeSizes = chapter({
  title: 'As one hole',
  inputs: [{ symbol: 'A_s', name: 'area of a sharp-edged hole', unit: 'cm²' }],
  formulas: [
    {
      symbol: 'a_q',
      name: 'side of a square hole',
      unit: 'mm',
      expression: 'u_m*sqrt(A_s/u_A)',
      source: geometry,
    },
    {
      symbol: 'd_q',
      name: 'diameter of a round hole',
      unit: 'mm',
      expression: 'u_m*sqrt(4*A_s/(pi*u_A))',
      source: geometry,
    },
  ],
})

/** The limit that a value must meet today so that it still meets the target after ageing. */
export const limitBeforeAgeing = chapter({
  title: 'Limit with the ageing allowance',
  inputs: [
    { symbol: 'L', name: 'limit', unit: 'as the target' },
    { symbol: 'g', name: 'growth of leakage', unit: '1' },
  ],
  formulas: [
    {
      symbol: 'L_g',
      name: 'limit that applies today',
      unit: 'as the target',
      expression: 'L/(1 + g)',
      source: derived('the growth of leakage, reversed'),
    },
  ],
})

/** What changed between two tests, or differs between two directions. */
export const ratesCompared = chapter({
  title: 'Two leakage rates compared',
  inputs: [
    { symbol: 'q_a', name: 'first air leakage rate', unit: 'm³/h' },
    { symbol: 'q_b', name: 'second air leakage rate', unit: 'm³/h' },
  ],
  formulas: [
    {
      symbol: 'd_ab',
      name: 'first minus second',
      unit: 'm³/h',
      expression: 'q_a - q_b',
      source: practice,
    },
    {
      symbol: 's_ab',
      name: 'difference, share of the first',
      unit: '1',
      expression: 'd_ab/q_a',
      source: practice,
    },
  ],
})
