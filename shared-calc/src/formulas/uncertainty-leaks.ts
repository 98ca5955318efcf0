import { chapter, derived } from './chapter.js'

/**
 * Effect of openings with different exponents on a straight line through logarithms. The flow of a house is the sum of
 * its openings' power laws, Q = Σ Cᵢ·Δp^nᵢ. With x = ln Δp and shares wᵢ of the flow, d(ln Q)/dx = Σ wᵢnᵢ and d²(ln
 * Q)/dx² = Σ wᵢ(nᵢ − n̄)² = κ: the curvature is the variance of the openings' exponents, never negative.
 *
 * A curve ½κ(x − x̄)² fitted by a line leaves, at z = ln Δp_r − x̄ from the middle of the readings, ½κ[z² − m₂ −
 * (m₃/m₂)·z] between truth and line (m₂, m₃: central moments of x): little within the readings, always too low a figure
 * below them. The same for any fit that is linear in y with sensitivities c_y: line minus truth = ½κ·Σ c_y·(x − ln
 * Δp_r)², `s_m`.
 *
 * Exponents spread by about 0.07 round their mean; κ is taken as uniformly distributed from 0 to twice 0.07². That is a
 * mean of 0.07², allowed for in the interval, and 0.07²/√3 about it; together (2/√3)·0.07² about zero.
 */
export const leakMixture = chapter({
  title: 'Openings of unlike exponents',
  inputs: [{ symbol: 's_l', name: "standard deviation of the openings' exponents", unit: '1' }],
  formulas: [
    {
      symbol: 'k_c',
      name: 'expected curvature of ln q against ln Δp',
      unit: '1',
      expression: 's_l^2',
      source: derived("second derivative of the sum of the openings' power laws"),
    },
    {
      symbol: 'u_k',
      name: 'standard uncertainty of the curvature',
      unit: '1',
      expression: 'k_c/sqrt(3)',
      source: derived('uniform distribution from 0 to twice the expected value, JCGM 100:2008, 4.3.7'),
    },
  ],
})
