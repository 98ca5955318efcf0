import { chapter, derived } from './chapter.js'

/** Spread of the zero-flow readings of one period. */
export const zeroFlowSpread = chapter({
  title: 'Scatter of the zero-flow pressure',
  inputs: [
    { symbol: 'dp_z', name: 'zero-flow pressure difference', unit: 'Pa', rows: true },
    { symbol: 'dp_m0', name: 'mean zero-flow pressure of the period', unit: 'Pa' },
  ],
  formulas: [
    {
      symbol: 'v_z',
      name: 'variance of the mean',
      unit: 'Pa²',
      expression: 'sum((dp_z - dp_m0) .^ 2)/((count(dp_z) - 1)*count(dp_z))',
      source: derived('JCGM 100:2008, 4.2.3'),
    },
  ],
})

/** Changes of the zero-flow pressures of all runs between their two periods. */
export const zeroFlowChange = chapter({
  title: 'Change of the zero-flow pressure',
  inputs: [
    { symbol: 'dp_01', name: 'mean zero-flow pressure before', unit: 'Pa', rows: true },
    { symbol: 'dp_02', name: 'mean zero-flow pressure after', unit: 'Pa', rows: true },
  ],
  formulas: [
    {
      symbol: 's_d',
      name: 'a quarter of the squared changes, summed over the runs',
      unit: 'Pa²',
      expression: 'sum((dp_01 - dp_02) .^ 2)/4',
      source: derived('variance of the mean of two observations, JCGM 100:2008, 4.2.3'),
    },
    {
      symbol: 'N_d',
      name: 'number of runs',
      unit: '1',
      expression: 'count(dp_01)',
      source: derived('one degree of freedom for each change'),
    },
  ],
})

/**
 * The zero-flow pressure of a run: how far the mean of its two periods may be from the zero-flow pressure during the
 * readings.
 *
 * Each period's mean scatters by v; the mean of both by (v₁ + v₂)/4. Beyond that the zero-flow pressure wanders with
 * wind and temperatures. The change Δ between the periods of a run shows it: Δ²/4 is an estimate of the variance of
 * their mean with one degree of freedom, and holds their scatter too, which must not be added again. Two runs make two
 * degrees, too few for a coverage factor (12.7 and 4.3), so the expected effect of wind is pooled with them, with four
 * degrees of freedom: (4·(k₀·½ρU²)² + ΣΔ²/4)/(4 + runs), 4 + runs degrees of freedom (pooled variance, JCGM 100:2008,
 * H.3.6 and 4.2.4). Where the periods scatter by more than that, their scatter counts.
 */
export const zeroFlowUncertainty = chapter({
  title: 'Uncertainty of the zero-flow pressure',
  inputs: [
    { symbol: 'v_1', name: 'variance of the mean before', unit: 'Pa²' },
    { symbol: 'v_2', name: 'variance of the mean after', unit: 'Pa²' },
    {
      symbol: 's_d',
      name: 'a quarter of the squared changes, summed over the runs',
      unit: 'Pa²',
    },
    { symbol: 'N_d', name: 'number of runs', unit: '1' },
    { symbol: 'p_w', name: 'dynamic pressure of the wind', unit: 'Pa' },
    {
      symbol: 'k_0',
      name: 'variation of the zero-flow pressure, share of the dynamic pressure',
      unit: '1',
    },
    { symbol: 'u_z', name: 'further standard uncertainty of the zero-flow pressure', unit: 'Pa' },
  ],
  formulas: [
    {
      symbol: 'nu_0',
      name: 'degrees of freedom: four for the expected variation in wind, one for each run',
      unit: '1',
      expression: '4 + N_d',
      source: derived('pooled variance, JCGM 100:2008, 4.2.4'),
    },
    {
      symbol: 'v_p',
      name: 'variance of the mean of two periods, pooled',
      unit: 'Pa²',
      expression: '(4*(k_0*p_w)^2 + s_d)/nu_0',
      source: derived('pooled variance, JCGM 100:2008, 4.2.4'),
    },
    {
      symbol: 'v_c',
      name: 'variance used: pooled, or the scatter of both periods if that is larger',
      unit: 'Pa²',
      expression: 'max((v_1 + v_2)/4, v_p)',
      source: derived('the change includes the scatter, so the scatter is counted once'),
    },
    {
      symbol: 'u_0',
      name: 'standard uncertainty of the zero-flow pressure',
      unit: 'Pa',
      expression: 'sqrt(v_c + u_z^2)',
      source: derived('JCGM 100:2008, 5.1.2'),
    },
    {
      symbol: 'r_0',
      name: 'square of that variance over its degrees of freedom',
      unit: 'Pa⁴',
      expression: 'v_c^2/nu_0',
      source: derived('Welch–Satterthwaite, JCGM 100:2008, G.4.1'),
    },
  ],
})
