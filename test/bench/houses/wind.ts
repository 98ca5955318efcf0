import type { Chance } from './chance.js'
import type { House } from './house.js'

/**
 * Wind at a house second by second: gusts, slow drift and turning of the wind, each remembering its last value and
 * forgetting it exponentially (first-order autoregression, sampled exactly).
 */
export class WindAtHouse {
  speed_m_s: number
  bearing: number
  private gust: number
  private drift: number
  private turn: number
  private readonly from: number

  constructor(
    private readonly mean_m_s: number,
    private readonly nature: House['gusts'],
    private readonly chance: Chance,
  ) {
    this.from = chance.between(0, 2 * Math.PI)
    this.gust = chance.error(1)
    this.drift = chance.error(1)
    this.turn = chance.error(1)
    this.speed_m_s = mean_m_s
    this.bearing = this.from
  }

  pass(seconds: number): void {
    if (this.mean_m_s === 0) return
    const { gust, gust_s, drift, drift_s, turn_rad, turn_s } = this.nature
    this.gust = this.remembered(this.gust, seconds / gust_s)
    this.drift = this.remembered(this.drift, seconds / drift_s)
    this.turn = this.remembered(this.turn, seconds / turn_s)
    this.speed_m_s = Math.max(0, this.mean_m_s * (1 + gust * this.gust + drift * this.drift))
    this.bearing = this.from + turn_rad * this.turn
  }

  private remembered(value: number, times: number): number {
    const share = Math.exp(-times)
    return value * share + this.chance.error(Math.sqrt(1 - share * share))
  }
}
