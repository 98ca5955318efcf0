import { evaluate, parseRecord } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { AirBalance, fanFlow } from '../bench/houses/air-balance'
import { chanceFrom } from '../bench/houses/chance'
import { heldBack, known, REFERENCE_kg_m3, trueArea, trueFlow } from '../bench/houses/house'
import { precise } from '../bench/houses/instruments'
import { simulatedTest } from '../bench/houses/simulated-test'
import { WindAtHouse } from '../bench/houses/wind'

const still = { speed_m_s: 0, bearing: 0 }
const alike = { indoor_kg_m3: REFERENCE_kg_m3, outdoor_kg_m3: REFERENCE_kg_m3 }

describe.each([
  ['known', known],
  ['held back', heldBack],
])('a simulated house of the %s family', (_, family) => {
  const house = family(chanceFrom(4))

  it('passes in still reference air the sum of its openings’ power laws', () => {
    const balance = new AirBalance(house, alike)
    for (const pressure of [4, 10, 25, 50]) {
      // Each opening by itself, typed out: C·Δpⁿ.
      const sum = house.openings.reduce((all, { coefficient: c, exponent: n }) => all + c * pressure ** n, 0)
      for (const side of [1, -1] as const) {
        const fan = { side, flow_m3_h: sum, pressure_Pa: pressure, fall: 0 }
        expect(side * balance.indoor(still, side * 20, fan)).toBeCloseTo(pressure, 3)
      }
    }
  })

  it('has an area of one discharge: Bernoulli’s speed through it carries the flow', () => {
    const speed = Math.sqrt((2 * 4) / REFERENCE_kg_m3)
    expect((trueArea(house, 4) / 1e4) * speed * 3600).toBeCloseTo(trueFlow(house, 4), 9)
  })

  it('lets in as much air as it lets out, by mass, in wind and cold with the fan off', () => {
    const air = { indoor_kg_m3: 1.2, outdoor_kg_m3: 1.31 }
    const wind = { speed_m_s: 5, bearing: 1 }
    const inside = new AirBalance(house, air).indoor(wind, 0)
    const masses = house.openings.map(({ coefficient, exponent, height_m, bearing }) => {
      const angle = bearing === undefined ? undefined : wind.bearing - bearing
      const outside = 0.5 * 1.31 * 25 * house.surfacePressure(angle) - (1.31 - 1.2) * 9.80665 * height_m
      const across = inside - outside
      const density = across > 0 ? 1.2 : 1.31
      const flow = coefficient * (REFERENCE_kg_m3 / density) ** (1 - exponent) * Math.abs(across) ** exponent
      return Math.sign(across) * density * flow
    })
    const turnover = masses.reduce((sum, mass) => sum + Math.abs(mass), 0)
    expect(turnover).toBeGreaterThan(1)
    expect(Math.abs(masses.reduce((sum, mass) => sum + mass, 0)) / turnover).toBeLessThan(1e-3)
  })
})

describe('the simulated fan and wind', () => {
  it('moves less against more pressure', () => {
    const fan = { side: -1, flow_m3_h: 1000, pressure_Pa: 50, fall: 0.5 } as const
    expect(fanFlow(fan, -50)).toBe(1000)
    expect(fanFlow(fan, -60)).toBeCloseTo(900, 9)
  })

  it('gusts about its mean, and remembers its last second', () => {
    const nature = { gust: 0.3, gust_s: 8, drift: 0.1, drift_s: 120, turn_rad: 0.2, turn_s: 60 }
    const wind = new WindAtHouse(5, nature, chanceFrom(2))
    const speeds = Array.from({ length: 100_000 }, () => {
      wind.pass(1)
      return wind.speed_m_s
    })
    const mean = speeds.reduce((sum, v) => sum + v, 0) / speeds.length
    const moment = (lag: number) =>
      speeds.slice(lag).reduce((sum, v, i) => sum + (v - mean) * ((speeds[i] ?? 0) - mean), 0) /
      (speeds.length - lag)
    expect(mean).toBeCloseTo(5, 1)
    expect(Math.sqrt(moment(0)) / 5).toBeCloseTo(Math.hypot(0.3, 0.1), 2)
    // 0.09·exp(−1/8) + 0.01·exp(−1/120), over their sum.
    expect(moment(1) / moment(0)).toBeCloseTo((0.09 * Math.exp(-1 / 8) + 0.01 * Math.exp(-1 / 120)) / 0.1, 2)
  })
})

describe('a simulated test', () => {
  it('is a record that the reader of records accepts, and finds the truth within its instruments in calm', () => {
    const chance = chanceFrom(9)
    for (let i = 0; i < 20; i += 1) {
      const { record, truth } = simulatedTest(known, { wind_m_s: 0 }, precise, chance)
      // Four standard uncertainties of the calibration, 0.75 %.
      expect(Math.abs(Math.log(evaluate(parseRecord(record)).results.q50.value / truth.q50))).toBeLessThan(
        0.03,
      )
    }
  })
})
