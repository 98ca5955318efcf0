import { describe, expect, it } from 'vitest'
import { averageOf } from '../../shared-calc/src/log/series/average'
import { gusts, normalSource } from './support/gauge-series'

const times = (count: number, step = 0.1) => Float64Array.from({ length: count }, (_, index) => index * step)
const drawn = (count: number, next: () => number) => Float64Array.from({ length: count }, next)

/** Variance of the mean of n samples of an AR(1) process of unit variance: Box, Jenkins, Reinsel, Time Series Analysis, ch. 2 (value from memory). */
function trueVariance(memory: number, n: number): number {
  let sum = 0
  for (let lag = 1; lag < n; lag++) sum += (1 - lag / n) * memory ** lag
  return (1 + 2 * sum) / n
}

describe('average of a window of a series', () => {
  it('is the mean, with the standard deviation of n − 1', () => {
    // Worked by hand: mean 5, squares about it 9+1+1+1+0+0+4+16 = 32, divided by 7.
    const average = averageOf(Float64Array.of(2, 4, 4, 4, 5, 5, 7, 9), times(8), 0, 7)
    expect(average.mean).toBe(5)
    expect(average.standardDeviation).toBeCloseTo(Math.sqrt(32 / 7), 14)
    expect(average.samples).toBe(8)
  })

  it('has the uncertainty s/√n where samples do not follow each other (GUM 4.2.3)', () => {
    const alternating = Float64Array.from({ length: 200 }, (_, index) => (index % 2 === 0 ? 10.3 : 9.7))
    const average = averageOf(alternating, times(200), 0, 199)
    expect(average.effectiveSamples).toBe(200)
    expect(average.standardUncertainty).toBeCloseTo(average.standardDeviation / Math.sqrt(200), 12)
  })

  it('drifts by the rise of the straight line through it', () => {
    const rising = Float64Array.from({ length: 201 }, (_, index) => 3 + 0.05 * index)
    expect(averageOf(rising, times(201), 0, 200).drift).toBeCloseTo(10, 12)
  })

  it.each([
    // At 0.95 a window holds five gusts: the scatter inside it is less than the scatter between windows.
    [0, 0.95],
    [0.5, 0.95],
    [0.8, 0.95],
    [0.9, 0.88],
    [0.95, 0.78],
  ])(
    'covers the scatter of repeated means of gusts with a memory of %d from sample to sample',
    (memory, least) => {
      const samples = 200
      const next = memory === 0 ? normalSource(1) : gusts(2, memory)
      const stated: number[] = []
      const windows = 1500
      for (let window = 0; window < windows; window++) {
        const { standardUncertainty } = averageOf(drawn(samples, next), times(samples), 0, samples - 1)
        // Withheld for fewer than one window in ten, at most.
        if (standardUncertainty !== undefined) stated.push(standardUncertainty ** 2)
      }
      expect(stated.length).toBeGreaterThan(0.9 * windows)
      const mean = stated.reduce((sum, one) => sum + one, 0) / stated.length
      const ratio = Math.sqrt(mean / trueVariance(memory, samples))
      expect(ratio).toBeGreaterThan(least)
      expect(ratio).toBeLessThan(1.1)
    },
  )

  it('states no uncertainty where the samples are too alike to tell', () => {
    const slow = Float64Array.from({ length: 200 }, (_, index) => Math.cos((Math.PI * index) / 199))
    const average = averageOf(slow, times(200), 0, 199)
    expect(average.effectiveSamples).toBeLessThanOrEqual(4)
    expect(average.standardUncertainty).toBeUndefined()
  })
})
