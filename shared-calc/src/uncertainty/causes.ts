import type { Source } from '../engine/index.js'
import type { DefaultedInput } from './defaults.js'

/** How a cause moves a figure: by a symbol of the sensitivities of the mean, of each run in the mean, or by a fixed power. */
type Sensitivity =
  | {
      readonly mean:
        | 'c_r'
        | 'c_g'
        | 'c_w'
        | 'c_v'
        | 'c_m'
        | 'c_Ti'
        | 'c_Te'
        | 'c_p'
        | 'c_hi'
        | 'c_he'
        | 'c_n'
        | 'c_s'
    }
  | { readonly ofRun: 'c_0' | 'g' }
  | { readonly fixed: 1 | -1; readonly why: string }

/** Where its standard uncertainty comes from, and its expected size where it lies one way only. */
type Size =
  | { readonly input: DefaultedInput }
  | { readonly fixed: number; readonly why: string }
  | { readonly block: 'wind'; readonly u: 'u_w' }
  | { readonly block: 'wind'; readonly u: 'u_v'; readonly expected: 'v_w' }
  | { readonly block: 'stack'; readonly u: 'u_t' }
  | { readonly block: 'stack'; readonly u: 'u_tv'; readonly expected: 'v_t' }
  | { readonly block: 'leaks'; readonly u: 'u_k'; readonly expected: 'k_c' }
  | { readonly logged: 'barometer' | 'indoor humidity' | 'outdoor humidity' | 'volume' }
  | { readonly ofRun: 'zeroFlow' | 'readings' }

/** What a draw of the Monte Carlo changes: see simulation/perturb-run.ts for what all readings of a run feel. */
export type Draw =
  | {
      readonly moves:
        | 'flows'
        | 'flows of other ranges'
        | 'meaning of flows'
        | 'span'
        | 'pressure shift'
        | 'pressure variance'
        | 'curvature'
        | 'zero flow'
        | 'readings'
        | 'figure'
    }
  | {
      readonly moves: 'input'
      readonly symbol: string
      /** Blocks that take it; every block where absent. */
      readonly blocks?: readonly string[]
      readonly relative?: true
    }

interface CauseEntry {
  readonly name: string
  /** Unit of its standard uncertainty. */
  readonly unit: string
  /** Input of the record's uncertainty part that sets it. */
  readonly input?: DefaultedInput
  /** All readings of a test share it, or each run has its own. */
  readonly scope: 'shared' | 'run'
  readonly sensitivity: Sensitivity
  readonly size: Size
  readonly draw: Draw
  /** What two tests must have alike to share it, so that it cancels in the change between them. */
  readonly sharedWhereSame?: 'flowDevice' | 'pressureGauge' | 'volume_m3' | 'envelopeArea_m2' | 'floorArea_m2'
  readonly source: Source
}

const guide: Source = { text: 'JCGM 100:2008, 5.1.2: first-order propagation', seen: 'derived' }
const secondOrder: Source = {
  text: 'power law of the openings to second order in their pressures',
  seen: 'derived',
}
const balance: Source = { text: 'balance of mass through unlike openings', seen: 'derived' }
const inverse = { fixed: -1, why: 'result is inversely proportional to its basis' } as const

/** Every cause of uncertainty, in the order of the budgets. A new one is a row here and a default in defaults.ts. */
export const causes = {
  'flow calibration': {
    name: 'flow calibration',
    unit: '1',
    input: 'flowCalibration_relative',
    scope: 'shared',
    sensitivity: { fixed: 1, why: 'leakage rate is proportional to flow' },
    size: { input: 'flowCalibration_relative' },
    draw: { moves: 'flows' },
    sharedWhereSame: 'flowDevice',
    source: guide,
  },
  'range step': {
    name: 'step between the ranges of the flow device',
    unit: '1',
    input: 'rangeStep_relative',
    scope: 'shared',
    sensitivity: { mean: 'c_r' },
    size: { input: 'rangeStep_relative' },
    draw: { moves: 'flows of other ranges' },
    sharedWhereSame: 'flowDevice',
    source: guide,
  },
  'meaning of flows': {
    name: 'whether flows are for device air or reference air',
    unit: '1',
    scope: 'shared',
    sensitivity: { mean: 'c_s' },
    size: {
      fixed: 1 / Math.sqrt(3),
      why: 'not logged: uniform distribution up to the full change, half-width over √3',
    },
    draw: { moves: 'meaning of flows' },
    sharedWhereSame: 'flowDevice',
    source: { text: 'JCGM 100:2008, 4.3.7: uniform distribution', seen: 'derived' },
  },
  'gauge span': {
    name: 'pressure gauge',
    unit: '1',
    input: 'gaugeSpan_relative',
    scope: 'shared',
    sensitivity: { mean: 'c_g' },
    size: { input: 'gaugeSpan_relative' },
    draw: { moves: 'span' },
    sharedWhereSame: 'pressureGauge',
    source: guide,
  },
  'leak mixture': {
    name: 'openings of unlike exponents',
    unit: '1',
    input: 'leakExponentSpread',
    scope: 'shared',
    sensitivity: { mean: 'c_m' },
    size: { block: 'leaks', u: 'u_k', expected: 'k_c' },
    draw: { moves: 'curvature' },
    source: {
      text: "variance of the openings' exponents as curvature of the leakage curve",
      seen: 'derived',
    },
  },
  'wind shift': {
    name: 'wind: shift of the mean pressure',
    unit: 'Pa',
    input: 'windShift',
    scope: 'shared',
    sensitivity: { mean: 'c_w' },
    size: { block: 'wind', u: 'u_w' },
    draw: { moves: 'pressure shift' },
    source: balance,
  },
  'wind spread': {
    name: 'wind: spread of the pressure around the envelope',
    unit: 'Pa²',
    input: 'windSpread',
    scope: 'shared',
    sensitivity: { mean: 'c_v' },
    size: { block: 'wind', u: 'u_v', expected: 'v_w' },
    draw: { moves: 'pressure variance' },
    source: secondOrder,
  },
  'stack shift': {
    name: 'stack: shift of the effective zero',
    unit: 'Pa',
    input: 'stackShift',
    scope: 'shared',
    sensitivity: { mean: 'c_w' },
    size: { block: 'stack', u: 'u_t' },
    draw: { moves: 'pressure shift' },
    source: balance,
  },
  'stack spread': {
    name: 'stack: spread of the pressure over the height',
    unit: 'Pa²',
    input: 'stackSpread',
    scope: 'shared',
    sensitivity: { mean: 'c_v' },
    size: { block: 'stack', u: 'u_tv', expected: 'v_t' },
    draw: { moves: 'pressure variance' },
    source: secondOrder,
  },
  'indoor temperature': {
    name: 'indoor temperature',
    unit: 'K',
    input: 'indoorTemperature_K',
    scope: 'shared',
    sensitivity: { mean: 'c_Ti' },
    size: { input: 'indoorTemperature_K' },
    draw: { moves: 'input', symbol: 'theta', blocks: ['air.indoor'] },
    source: guide,
  },
  'outdoor temperature': {
    name: 'outdoor temperature',
    unit: 'K',
    input: 'outdoorTemperature_K',
    scope: 'shared',
    sensitivity: { mean: 'c_Te' },
    size: { input: 'outdoorTemperature_K' },
    draw: { moves: 'input', symbol: 'theta', blocks: ['air.outdoor'] },
    source: guide,
  },
  barometer: {
    name: 'barometric pressure',
    unit: 'Pa',
    input: 'barometricPressure_Pa',
    scope: 'shared',
    sensitivity: { mean: 'c_p' },
    size: { logged: 'barometer' },
    draw: { moves: 'input', symbol: 'p_bar', blocks: ['air.indoor', 'air.outdoor'] },
    source: guide,
  },
  'indoor humidity': {
    name: 'humidity indoors',
    unit: '1',
    input: 'relativeHumidity',
    scope: 'shared',
    sensitivity: { mean: 'c_hi' },
    size: { logged: 'indoor humidity' },
    draw: { moves: 'input', symbol: 'phi', blocks: ['air.indoor'] },
    source: guide,
  },
  'outdoor humidity': {
    name: 'humidity outdoors',
    unit: '1',
    input: 'relativeHumidity',
    scope: 'shared',
    sensitivity: { mean: 'c_he' },
    size: { logged: 'outdoor humidity' },
    draw: { moves: 'input', symbol: 'phi', blocks: ['air.outdoor'] },
    source: guide,
  },
  'assumed exponent': {
    name: 'assumed air flow exponent',
    unit: '1',
    input: 'assumedExponent',
    scope: 'shared',
    sensitivity: { mean: 'c_n' },
    size: { input: 'assumedExponent' },
    draw: { moves: 'input', symbol: 'n_a' },
    source: guide,
  },
  'zero flow': {
    name: 'zero-flow pressure',
    unit: 'Pa',
    input: 'zeroFlow_Pa',
    scope: 'run',
    sensitivity: { ofRun: 'c_0' },
    size: { ofRun: 'zeroFlow' },
    draw: { moves: 'zero flow' },
    source: guide,
  },
  scatter: {
    name: 'scatter of the readings',
    unit: '1',
    scope: 'run',
    sensitivity: { ofRun: 'g' },
    size: { ofRun: 'readings' },
    draw: { moves: 'readings' },
    source: guide,
  },
  'other direction': {
    name: 'direction not measured',
    unit: '1',
    input: 'otherDirection_relative',
    scope: 'shared',
    sensitivity: { fixed: 1, why: 'the result is the mean of both directions' },
    size: { input: 'otherDirection_relative' },
    draw: { moves: 'figure' },
    source: { text: 'common practice, no source', seen: 'common practice' },
  },
  'internal volume': {
    name: 'internal volume',
    unit: '1',
    input: 'volume_relative',
    scope: 'shared',
    sensitivity: inverse,
    size: { logged: 'volume' },
    draw: { moves: 'input', symbol: 'V', relative: true },
    sharedWhereSame: 'volume_m3',
    source: guide,
  },
  'envelope area': {
    name: 'envelope area',
    unit: '1',
    input: 'envelopeArea_relative',
    scope: 'shared',
    sensitivity: inverse,
    size: { input: 'envelopeArea_relative' },
    draw: { moves: 'input', symbol: 'A_E', relative: true },
    sharedWhereSame: 'envelopeArea_m2',
    source: guide,
  },
  'floor area': {
    name: 'floor area',
    unit: '1',
    input: 'floorArea_relative',
    scope: 'shared',
    sensitivity: inverse,
    size: { input: 'floorArea_relative' },
    draw: { moves: 'input', symbol: 'A_F', relative: true },
    sharedWhereSame: 'floorArea_m2',
    source: guide,
  },
} as const satisfies Readonly<Record<string, CauseEntry>>

export type CauseId = keyof typeof causes

/** A row of the table by its id, with what all rows may have. */
export const cause = (id: CauseId): CauseEntry => causes[id]

/** The ids in the order of the table. */
export const causeIds = Object.keys(causes) as CauseId[]

/** Which basis of a figure brings which cause; the loss area is measured as the envelope is. */
export const causeOfBasis = {
  n: 'internal volume',
  qE: 'envelope area',
  qT: 'envelope area',
  aE: 'envelope area',
  qF: 'floor area',
} as const
