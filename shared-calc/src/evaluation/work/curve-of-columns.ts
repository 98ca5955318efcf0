import { constantValue } from '../../catalogue/constants.js'
import { type Block, type BlockOf, byRule, Calculation, type Column, type Given } from '../../engine/index.js'
import { moistAir } from '../../formulas/air.js'
import { atReferencePressure } from '../../formulas/at-reference-pressure.js'
import { fitScatter } from '../../formulas/confidence.js'
import { derivedRates } from '../../formulas/derived.js'
import { leakageCurve } from '../../formulas/leakage-curve.js'
import { standardAir } from '../../formulas/standard-air.js'

/** A value with its 95 % interval, fit scatter only. */
export interface Between {
  readonly value: number
  readonly lower: number
  readonly upper: number
}

/** A leakage curve fitted to two columns of a sheet. */
export interface ColumnsCurve {
  readonly airLeakageCoefficient: Between
  readonly airFlowExponent: Between
  readonly rSquared: number
  readonly readings: number
  /** Air leakage rate at a pressure difference in Pa, m³/h. */
  at(pressure_Pa: number): Between
  /** Effective leakage area at a pressure difference in Pa, cm². */
  leakageArea(pressure_Pa: number): number
  /** Air leakage rate over a volume, an envelope area or a floor area: 1/h or m³/(h·m²). */
  rate(pressure_Pa: number, basis: 'volume' | 'envelope' | 'floor', size: number): number
}

/**
 * The leakage curve through pairs that need no further correction.
 * @param pressures_Pa - induced pressure differences, length N ≥ 3, not 0; their signs are left out of account
 * @param flows_m3_h - flows through the envelope at reference air density, length N, above 0
 */
export function curveOfColumns(pressures_Pa: readonly number[], flows_m3_h: readonly number[]): ColumnsCurve {
  const calculation = new Calculation()
  const reference = byRule(constantValue('rho_0'), 'flows are given at reference air density')
  const none = byRule(0, 'pressure differences are given as induced')
  const curve = calculation.add('curve', 'leakage curve', leakageCurve, {
    dp_m: column(pressures_Pa.map(Math.abs)),
    q_m: column(flows_m3_h),
    sign: byRule(1, 'magnitudes'),
    dp_01: none,
    dp_02: none,
    rho_d: reference,
    rho_x: reference,
  })
  const scatter = calculation.add('scatter', 'scatter of the fit', fitScatter, {
    x: curve.refColumn('x'),
    e: curve.refColumn('e'),
    N: curve.ref('N'),
    xbar: curve.ref('xbar'),
    S_xx: curve.ref('S_xx'),
    n: curve.ref('n'),
    lnC: curve.ref('lnC'),
  })
  const standard = calculation.add('standard', 'reference air density', standardAir, {
    C_env: curve.ref('C_env'),
    C_lo: scatter.ref('C_lo'),
    C_hi: scatter.ref('C_hi'),
    n: curve.ref('n'),
    rho_x: reference,
  })
  const rates = new Map<number, BlockOf<typeof atReferencePressure>>()
  const rateAt = (pressure: number): BlockOf<typeof atReferencePressure> => {
    const known = rates.get(pressure)
    if (known) return known
    const rate = calculation.add(`at${pressure}`, `at ${pressure} Pa`, atReferencePressure, {
      dp_r: byRule(pressure, 'reference pressure'),
      C_L: standard.ref('C_L'),
      n: curve.ref('n'),
      N: curve.ref('N'),
      xbar: curve.ref('xbar'),
      S_xx: curve.ref('S_xx'),
      S_n: scatter.ref('S_n'),
      t_95: scatter.ref('t_95'),
    })
    rates.set(pressure, rate)
    return rate
  }
  return {
    airLeakageCoefficient: between(standard, 'C_L', 'C_L_lo', 'C_L_hi'),
    airFlowExponent: { value: curve.value('n'), lower: scatter.value('n_lo'), upper: scatter.value('n_hi') },
    rSquared: curve.value('r_2'),
    readings: pressures_Pa.length,
    at: (pressure) => between(rateAt(pressure), 'q_pr', 'q_lo', 'q_hi'),
    leakageArea: (pressure) => rateAt(pressure).value('A_L'),
    rate: (pressure, basis, size) => rateOver(rateAt(pressure).ref('q_pr'), basis, size),
  }
}

/** Density of moist air, kg/m³, from temperature in °C, relative humidity 0…1 and pressure in Pa. */
export function moistAirDensity(
  temperature_C: number,
  relativeHumidity: number,
  pressure_Pa: number,
): number {
  return new Calculation()
    .add('air', 'air', moistAir, {
      theta: byRule(temperature_C, 'given'),
      phi: byRule(relativeHumidity, 'given'),
      p_bar: byRule(pressure_Pa, 'given'),
    })
    .value('rho')
}

const BASES = { volume: ['V', 'n_pr'], envelope: ['A_E', 'q_E'], floor: ['A_F', 'q_F'] } as const

function rateOver(flow: Given, basis: keyof typeof BASES, size: number): number {
  const [symbol, rate] = BASES[basis]
  return new Calculation()
    .add('rate', 'derived', derivedRates, { q_pr: flow, [symbol]: byRule(size, 'given') })
    .value(rate)
}

const between = <S extends string>(block: Block<S>, value: S, lower: S, upper: S): Between => ({
  value: block.value(value),
  lower: block.value(lower),
  upper: block.value(upper),
})

const column = (values: readonly number[]): Column => ({
  values,
  origin: (row) => ({ kind: 'rule', reason: `row ${row + 1} of the range` }),
})
