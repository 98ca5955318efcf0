/**
 * Every figure that an evaluation publishes, once: evaluation, summary, Check, register, pane, command output,
 * uncertainty budget and spreadsheet functions read their names, units, places and decimals here.
 */
export interface FigureDefinition {
  /** As the evaluation spells it. */
  readonly key: string
  /** As the trade abbreviates it, for column heads and lists. */
  readonly short: string
  /** What it is, in words; a method may have a term of its own for it. */
  readonly name: string
  readonly unit: string
  /** Decimal places that a report prints. */
  readonly decimals: number
  /** Block it is read off, within a run or the means: `curve`, `standard`, or those at a reference pressure. */
  readonly block: string
  readonly symbol: string
  /** Block and symbols of its interval's ends, where the fit gives one. */
  readonly ends?: { readonly block: string; readonly lo: string; readonly hi: string }
  /** Workbook-level name, for the main results. */
  readonly bookName?: string
}

/** A figure at a reference pressure: given for each run and as the mean of the directions. */
export interface ResultDefinition extends FigureDefinition {
  readonly key: ResultKey
  /** Its name without the pressure: `air change rate`. */
  readonly quantity: string
  readonly at_Pa: 50 | 10 | 4
  /** What the building must have for it. */
  readonly needs?: 'volume_m3' | 'envelopeArea_m2' | 'floorArea_m2'
}

export type ResultKey = 'q50' | 'q10' | 'q4' | 'ela4' | 'ela10' | 'n50' | 'qE50' | 'qF50'

const endsOf = <Name extends string>(block: Name, stem: string) => ({
  block,
  lo: `${stem}_lo`,
  hi: `${stem}_hi`,
})

const named = <At extends 50 | 10 | 4>(quantity: string, at_Pa: At) => ({
  quantity,
  name: `${quantity} at ${at_Pa} Pa`,
  at_Pa,
})
const rate = (at_Pa: 50 | 10 | 4) => ({
  ...named('air leakage rate', at_Pa),
  short: `q${at_Pa}`,
  unit: 'm3/h',
  decimals: 1,
  block: `at${at_Pa}`,
  symbol: 'q_pr',
  ends: endsOf(`at${at_Pa}`, 'q'),
})
const area = (at_Pa: 10 | 4) => ({
  ...named('effective leakage area', at_Pa),
  short: `ELA ${at_Pa} Pa`,
  unit: 'cm2',
  decimals: 1,
  block: `at${at_Pa}`,
  symbol: 'A_L',
})
const related = (quantity: string, symbol: string) =>
  ({
    ...named(quantity, 50),
    decimals: 2,
    block: 'at50.rates',
    symbol,
    ends: endsOf('at50.rates', symbol),
  }) as const

/** Figures at the reference pressures, in the order of the evaluation. */
export const results: Readonly<Record<ResultKey, ResultDefinition>> = {
  q50: { key: 'q50', ...rate(50), bookName: 'air_leakage_rate_50' },
  q10: { key: 'q10', ...rate(10) },
  q4: { key: 'q4', ...rate(4) },
  ela4: { key: 'ela4', ...area(4) },
  ela10: { key: 'ela10', ...area(10) },
  n50: {
    key: 'n50',
    short: 'n50',
    unit: '1/h',
    ...related('air change rate', 'n_pr'),
    needs: 'volume_m3',
    bookName: 'air_change_rate_50',
  },
  qE50: {
    key: 'qE50',
    short: 'qE50',
    unit: 'm3/(h·m2)',
    ...related('specific leakage rate (envelope)', 'q_E'),
    needs: 'envelopeArea_m2',
    bookName: 'specific_leakage_rate_envelope_50',
  },
  qF50: {
    key: 'qF50',
    short: 'qF50',
    unit: 'm3/(h·m2)',
    ...related('specific leakage rate (floor)', 'q_F'),
    needs: 'floorArea_m2',
    bookName: 'specific_leakage_rate_floor_50',
  },
}

/** The results that reports print, in their order. */
export const reportedResults = (['n50', 'q50', 'qE50', 'qF50', 'ela4', 'ela10'] as const).map(
  (key) => results[key],
)

/** Figures of one run's curve, by their key in the evaluation. */
export const curveFigures = {
  zeroFlowPressure_Pa: {
    key: 'zeroFlowPressure_Pa',
    short: 'Δp₀',
    name: 'zero-flow pressure',
    unit: 'Pa',
    decimals: 2,
    block: 'curve',
    symbol: 'dp_0',
  },
  airFlowCoefficient: {
    key: 'airFlowCoefficient',
    short: 'C_env',
    name: 'air flow coefficient',
    unit: 'm3/(h·Pa^n)',
    decimals: 3,
    block: 'curve',
    symbol: 'C_env',
    ends: endsOf('scatter', 'C'),
  },
  airLeakageCoefficient: {
    key: 'airLeakageCoefficient',
    short: 'C_L',
    name: 'air leakage coefficient',
    unit: 'm3/(h·Pa^n)',
    decimals: 3,
    block: 'standard',
    symbol: 'C_L',
    ends: endsOf('standard', 'C_L'),
    bookName: 'air_leakage_coefficient',
  },
  airFlowExponent: {
    key: 'airFlowExponent',
    short: 'n',
    name: 'air flow exponent',
    unit: '1',
    decimals: 3,
    block: 'curve',
    symbol: 'n',
    ends: endsOf('scatter', 'n'),
    bookName: 'air_flow_exponent',
  },
  rSquared: {
    key: 'rSquared',
    short: 'r²',
    name: 'coefficient of determination',
    unit: '1',
    decimals: 5,
    block: 'curve',
    symbol: 'r_2',
  },
} as const satisfies Readonly<Record<string, FigureDefinition>>

/** Name with symbol, where the symbol says more than the name: "air flow exponent n". */
export const nameWithSymbol = ({ name, short }: FigureDefinition): string => `${name} ${short}`

/** Spreadsheet number format with the decimals of a figure. */
export const numberFormat = ({ decimals }: Pick<FigureDefinition, 'decimals'>): string =>
  decimals === 0 ? '0' : `0.${'0'.repeat(decimals)}`
