import normalCdf from '@stdlib/stats-base-dists-normal-cdf'
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import tCdf from '@stdlib/stats-base-dists-t-cdf'
import tQuantile from '@stdlib/stats-base-dists-t-quantile'

/** Two numbers closer than this share of the larger are taken as equal: what rounding on the way can make of one number. */
const EQUAL_WITHIN = 1e-9

/**
 * A value as it is compared with a limit: the limit itself where the two are equal, else the value. The one comparison of
 * verdict, decision, rules and re-run.
 */
export const toLimit = (value: number, limit: number): number =>
  Math.abs(value - limit) <= EQUAL_WITHIN * Math.max(Math.abs(value), Math.abs(limit)) ? limit : value

/** The same as a spreadsheet formula, from the formulas of both. */
export const toLimitInSheet = (value: string, limit: string): string =>
  `IF(ABS(${value}-${limit})<=${EQUAL_WITHIN}*MAX(ABS(${value}),ABS(${limit})),${limit},${value})`

/** Whether a value is above a limit and not equal to it. */
export const exceeds = (value: number, limit: number): boolean => toLimit(value, limit) > limit

/** Whether a value is below a limit and not equal to it. */
export const fallsBelow = (value: number, limit: number): boolean => toLimit(value, limit) < limit

type Numbers = readonly number[]

/** A function of plain numbers, taken row by row where an argument is a column. */
export interface ScalarFunction {
  readonly kind: 'scalar'
  readonly evaluate: (...values: number[]) => number
  /** What scripts call it by: a function of the language, or one exported here. */
  readonly script: string
  /** Spreadsheet formula from the arguments' formulas. */
  readonly sheet: (...args: string[]) => string
}

/** A function that takes one whole column and returns one number. */
export interface ColumnFunction {
  readonly kind: 'column'
  readonly evaluate: (values: Numbers) => number
  readonly script: string
  readonly sheet: (range: string) => string
}

const total = (values: Numbers): number => {
  let sum = 0
  for (let i = 0; i < values.length; i += 1) sum += values[i] as number
  return sum
}

/** Largest value; NaN where one is NaN, as Math.max has it. */
export function largest(values: Numbers): number {
  let most = Number.NEGATIVE_INFINITY
  for (let i = 0; i < values.length; i += 1) {
    const value = values[i] as number
    if (value > most || Number.isNaN(value)) most = value
  }
  return most
}

/** Smallest value; NaN where one is NaN. */
export function smallest(values: Numbers): number {
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i < values.length; i += 1) {
    const value = values[i] as number
    if (value < least || Number.isNaN(value)) least = value
  }
  return least
}

/** Mean of the values on one side of zero; 0 where there is none on that side. */
function sideMean(values: Numbers, side: 1 | -1): number {
  let sum = 0
  let count = 0
  for (let i = 0; i < values.length; i += 1) {
    const value = values[i] as number
    if (value * side > 0) {
      sum += value
      count += 1
    }
  }
  return count === 0 ? 0 : sum / count
}

const quantiles = new Map<string, number>()

/**
 * Two-sided Student t quantile, t(1 − alpha/2, dof); NaN for NaN, as with any other function: the block is refused then.
 * Throws RangeError when alpha or dof is out of range.
 */
export function studentT(alpha: number, dof: number): number {
  if (Number.isNaN(alpha) || Number.isNaN(dof)) return Number.NaN
  const key = `${alpha}/${dof}`
  const known = quantiles.get(key)
  if (known !== undefined) return known
  const value = tQuantile(1 - alpha / 2, dof)
  if (!Number.isFinite(value))
    throw new RangeError(`no Student t quantile for alpha ${alpha}, ${dof} degrees of freedom`)
  if (quantiles.size > 5000) quantiles.clear()
  quantiles.set(key, value)
  return value
}

/** Rounds half away from zero, as spreadsheets' ROUND does. */
export function roundTo(value: number, decimals: number): number {
  return Math.sign(value) * shifted(Math.round(shifted(Math.abs(value), decimals)), -decimals)
}

/** A number with its decimal point moved, by its text: 1.005 becomes 100.5, which no multiplication gives. */
function shifted(value: number, places: number): number {
  const [digits = '', exponent = '0'] = String(value).split('e')
  return Number(`${digits}e${Number(exponent) + places}`)
}

/** Share of Student's t distribution up to a value. */
export const studentShare = (t: number, dof: number): number => tCdf(t, dof)
/** Share of the standard normal distribution up to a value, and the value for a share. */
export const normalShare = (z: number): number => normalCdf(z, 0, 1)
export const normalValue = (share: number): number => normalQuantile(share, 0, 1)

export const meanOf = (values: Numbers): number => total(values) / values.length
export const countOf = (values: Numbers): number => values.length
export const positiveMean = (values: Numbers): number => sideMean(values, 1)
export const negativeMean = (values: Numbers): number => sideMean(values, -1)

const scalar = <Values extends number[]>(
  name: string,
  script: string,
  evaluate: (...values: Values) => number,
): ScalarFunction => ({
  kind: 'scalar',
  evaluate: evaluate as ScalarFunction['evaluate'],
  script,
  sheet: (...args) => `${name}(${args.join(',')})`,
})

const column = (
  script: string,
  evaluate: ColumnFunction['evaluate'],
  sheet: ColumnFunction['sheet'],
): ColumnFunction => ({ kind: 'column', evaluate, script, sheet })

/** The functions that expressions may use, each with its one implementation and its spreadsheet name. */
export const scalarFunctions: Readonly<Record<string, ScalarFunction>> = {
  abs: scalar('ABS', 'Math.abs', Math.abs),
  sqrt: scalar('SQRT', 'Math.sqrt', Math.sqrt),
  exp: scalar('EXP', 'Math.exp', Math.exp),
  log: scalar('LN', 'Math.log', Math.log),
  max: scalar('MAX', 'Math.max', Math.max),
  min: scalar('MIN', 'Math.min', Math.min),
  round: scalar('ROUND', 'roundTo', roundTo),
  floor: scalar('INT', 'Math.floor', Math.floor),
  to_limit: {
    ...scalar('', 'toLimit', toLimit),
    sheet: (value, limit) => toLimitInSheet(value as string, limit as string),
  },
  student_t: scalar('_xlfn.T.INV.2T', 'studentT', studentT),
  student_share: {
    ...scalar('', 'studentShare', studentShare),
    sheet: (t, dof) => `_xlfn.T.DIST(${t},${dof},TRUE)`,
  },
  normal_share: scalar('NORMSDIST', 'normalShare', normalShare),
  normal_quantile: scalar('NORMSINV', 'normalValue', normalValue),
}

export const columnFunctions: Readonly<Record<string, ColumnFunction>> = {
  mean: column('meanOf', meanOf, (r) => `AVERAGE(${r})`),
  count: column('countOf', countOf, (r) => `COUNT(${r})`),
  max: column('largest', largest, (r) => `MAX(${r})`),
  min: column('smallest', smallest, (r) => `MIN(${r})`),
  positive_mean: column(
    'positiveMean',
    positiveMean,
    (r) => `IF(COUNTIF(${r},">0")=0,0,SUMIF(${r},">0")/MAX(1,COUNTIF(${r},">0")))`,
  ),
  negative_mean: column(
    'negativeMean',
    negativeMean,
    (r) => `IF(COUNTIF(${r},"<0")=0,0,SUMIF(${r},"<0")/MAX(1,COUNTIF(${r},"<0")))`,
  ),
}
