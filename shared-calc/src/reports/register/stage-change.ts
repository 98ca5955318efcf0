import { byRule, Calculation, columnOf, type Given } from '../../engine/index.js'
import { changeBetweenTests, crossing, spreadOfMean } from '../../formulas/stage-change.js'
import type { LineCurve, LineQuantity, TestLine } from './test-line.js'

/** What changed in one quantity between two tests of a house. */
export interface QuantityChange {
  readonly earlier: number
  readonly later: number
  readonly change: number
  /** Share of the earlier value. */
  readonly share: number
  /** 95 % interval of the change: fit scatter only. Absent where a fit left no freedom to judge it. */
  readonly interval?: readonly [number, number]
}

export interface StageChange {
  readonly n50?: QuantityChange
  readonly q50?: QuantityChange
  readonly q4?: QuantityChange
  readonly ela4?: QuantityChange
  /** Pressure at which the curves of the same direction cross, where that lies between 4 and 50 Pa. */
  readonly crossings: readonly { readonly direction: string; readonly pressure_Pa: number }[]
  /** Said where leakage fell at one pressure and rose at the other. */
  readonly warning?: string
}

/** Pressures between which curves are looked at: the usual ends of what is reported. */
const LOW_PA = 4
const HIGH_PA = 50

type Compared = Pick<TestLine, 'results' | 'curves'>

/** Compares two tests of one house: in n50, q50, q4 and leakage area, with the interval of each change. */
export function stageChange(earlier: Compared, later: Compared): StageChange {
  const change = (name: LineQuantity, at: 'q50' | 'q4') => changeOf(earlier, later, name, at)
  const changes = {
    n50: change('n50', 'q50'),
    q50: change('q50', 'q50'),
    q4: change('q4', 'q4'),
    ela4: change('ela4', 'q4'),
  }
  const crossings = earlier.curves.flatMap((before) => {
    const after = later.curves.find(({ direction }) => direction === before.direction)
    const pressure = after && crossingPressure(before, after)
    return pressure !== undefined && pressure > LOW_PA && pressure < HIGH_PA
      ? [{ direction: before.direction, pressure_Pa: pressure }]
      : []
  })
  const warning = opposite(changes.q50, changes.q4, crossings)
  const { n50, q50, q4, ela4 } = changes
  return {
    ...(n50 && { n50 }),
    ...(q50 && { q50 }),
    ...(q4 && { q4 }),
    ...(ela4 && { ela4 }),
    crossings,
    ...(warning !== undefined && { warning }),
  }
}

const given = (value: number): Given => byRule(value, 'of a test')

function changeOf(
  earlier: Compared,
  later: Compared,
  name: LineQuantity,
  at: 'q50' | 'q4',
): QuantityChange | undefined {
  const [before, after] = [earlier.results[name], later.results[name]]
  if (before === undefined || after === undefined) return undefined
  const spreads = [spread(earlier, name, at), spread(later, name, at)]
  const [h1, h2] = spreads
  const block = new Calculation().add('change', 'Change between two tests', changeBetweenTests, {
    v_1: given(before),
    v_2: given(after),
    ...(h1 !== undefined && h2 !== undefined && { h_1: given(h1), h_2: given(h2) }),
  })
  return {
    earlier: before,
    later: after,
    change: block.value('d'),
    share: block.value('s'),
    ...(block.has('d_lo') && { interval: [block.value('d_lo'), block.value('d_hi')] as const }),
  }
}

/** Half-width of a mean, in its own unit: the flow's interval scaled as the quantity is to the flow. */
function spread({ results, curves }: Compared, name: LineQuantity, at: 'q50' | 'q4'): number | undefined {
  const [value, flow] = [results[name], results[at]]
  const ends = curves.flatMap((curve) => (curve[at] ? [curve[at]] : []))
  if (value === undefined || !flow || ends.length === 0 || ends.length !== curves.length) return undefined
  const scale = value / flow
  return new Calculation()
    .add('spread', 'Spread of the mean', spreadOfMean, {
      lo_r: columnOf(ends.map(([low]) => given(low * scale))),
      hi_r: columnOf(ends.map(([, high]) => given(high * scale))),
    })
    .value('h')
}

/** Undefined where the curves are parallel, or cross beyond any number. */
export function crossingPressure(
  before: Pick<LineCurve, 'coefficient' | 'exponent'>,
  after: Pick<LineCurve, 'coefficient' | 'exponent'>,
): number | undefined {
  if (before.exponent === after.exponent) return undefined
  const pressure = new Calculation()
    .add('crossing', 'Where two curves cross', crossing, {
      C_1: given(before.coefficient),
      C_2: given(after.coefficient),
      n_1: given(before.exponent),
      n_2: given(after.exponent),
    })
    .value('dp_x')
  return Number.isFinite(pressure) && pressure > 0 ? pressure : undefined
}

function opposite(
  q50: QuantityChange | undefined,
  q4: QuantityChange | undefined,
  crossings: StageChange['crossings'],
): string | undefined {
  if (!q50 || !q4 || q50.change * q4.change >= 0) return undefined
  const moved = (change: number) => (change < 0 ? 'fell' : 'rose')
  const percent = ({ share }: QuantityChange) => `${Math.abs(share * 100).toFixed(1)} %`
  const where = crossings.map(({ pressure_Pa }) => `${pressure_Pa.toFixed(0)} Pa`)
  const at = where.length > 0 ? `: the lines cross at ${[...new Set(where)].join(' and ')}` : ''
  const unsure = [q50, q4].some(({ interval }) => interval && interval[0] * interval[1] <= 0)
  const scatter = unsure ? ' (one of the two is within the scatter of the fits)' : ''
  return `q50 ${moved(q50.change)} by ${percent(q50)} while q4 ${moved(q4.change)} by ${percent(q4)}${at}${scatter}. State the pressure when you quote a change`
}
