import { chapter, definition, derived, practice } from './chapter.js'
import { holeFor } from './verdict.js'

/** What the leakage of one stage may be, and what it leaves for the trades that follow. */
export const stageAllowance = chapter({
  title: 'Leakage allowed up to a stage',
  inputs: [
    { symbol: 'q_t', name: 'air leakage rate that just meets the target', unit: 'm³/h' },
    { symbol: 'f_s', name: 'share of it that may be used up to this stage', unit: '1' },
    { symbol: 'q_s', name: 'air leakage rate measured at this stage', unit: 'm³/h' },
    { symbol: 'dp_r', name: 'reference pressure difference', unit: 'Pa' },
  ],
  formulas: [
    {
      symbol: 'q_a',
      name: 'air leakage rate allowed up to this stage',
      unit: 'm³/h',
      expression: 'f_s*q_t',
      source: practice,
    },
    {
      symbol: 'q_l',
      name: 'left for the stages that follow',
      unit: 'm³/h',
      expression: 'q_t - q_s',
      source: derived('target minus what is used'),
    },
    {
      symbol: 's_u',
      name: 'share of the target used',
      unit: '1',
      expression: 'q_s/q_t',
      source: derived('definition of a share'),
    },
    {
      symbol: 'A_l',
      name: 'left for the stages that follow, as a sharp-edged hole',
      unit: 'cm²',
      expression: holeFor('q_l'),
      source: derived('orifice law q = C·A·√(2Δp/ρ)'),
    },
  ],
})

/** What one stage used. */
export const stageUse = chapter({
  title: 'Leakage used by a stage',
  inputs: [
    { symbol: 'q_e', name: 'air leakage rate of the test before', unit: 'm³/h' },
    { symbol: 'q_s', name: 'air leakage rate measured at this stage', unit: 'm³/h' },
  ],
  formulas: [
    {
      symbol: 'q_u',
      name: 'used since the test before; negative where leaks were closed',
      unit: 'm³/h',
      expression: 'q_s - q_e',
      source: definition('later minus earlier'),
    },
  ],
})

/** How sure it is that the true leakage is within what is allowed up to the stage. */
export const stageProbability = chapter({
  title: 'Whether the next trade may start',
  inputs: [
    { symbol: 'q_a', name: 'air leakage rate allowed up to this stage', unit: 'm³/h' },
    { symbol: 'q_s', name: 'air leakage rate measured at this stage', unit: 'm³/h' },
    { symbol: 'u_c', name: 'combined relative standard uncertainty of it', unit: '1' },
    { symbol: 'b', name: 'expected correction of its logarithm', unit: '1' },
    { symbol: 'nu_e', name: 'effective degrees of freedom', unit: '1' },
  ],
  formulas: [
    {
      symbol: 'P_s',
      name: 'probability that the true leakage is within what is allowed',
      unit: '1',
      expression: 'student_share((log(q_a/q_s) - b)/u_c, nu_e)',
      source: derived('JCGM 106:2012, 7.3, as for the target'),
    },
  ],
})
