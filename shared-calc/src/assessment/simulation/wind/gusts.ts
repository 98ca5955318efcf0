import type { Random } from '../random.js'

/** Wind at one moment. */
export interface Wind {
  readonly speed_m_s: number
  /** Bearing it comes from, rad. */
  readonly bearing: number
}

/** Gusts die away over some 8 s, the mean drifts over some 2 min, the bearing wanders over some 1 min. */
const GUST = { share: 0.3, time_s: 8 }
const DRIFT = { share: 0.12, time_s: 120 }
const WANDER = { share: 0.25, time_s: 60 }

/**
 * Wind that gusts, drifts and turns: three first-order Markov processes round a mean. Its mean over a long time is the
 * speed it was made with. Shares and times: order of near-ground turbulence, common practice, no source.
 */
export class Gusts {
  private readonly bearing: number
  private gust: number
  private drift: number
  private wander: number

  constructor(
    private readonly mean_m_s: number,
    private readonly random: Random,
  ) {
    this.bearing = 2 * Math.PI * random.uniform()
    this.gust = random.normal()
    this.drift = random.normal()
    this.wander = random.normal()
  }

  /** The wind some seconds later. */
  after(seconds: number): Wind {
    this.gust = this.step(this.gust, seconds, GUST.time_s)
    this.drift = this.step(this.drift, seconds, DRIFT.time_s)
    this.wander = this.step(this.wander, seconds, WANDER.time_s)
    const speed = this.mean_m_s * (1 + GUST.share * this.gust + DRIFT.share * this.drift)
    return { speed_m_s: Math.max(0, speed), bearing: this.bearing + WANDER.share * this.wander }
  }

  private step(state: number, seconds: number, time_s: number): number {
    const kept = Math.exp(-seconds / time_s)
    return kept * state + Math.sqrt(1 - kept * kept) * this.random.normal()
  }
}
