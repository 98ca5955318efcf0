import { describe, expect, it } from 'vitest'
import { expectPrinted, halfLastPlace } from './expect-printed'

describe('comparing with a printed figure', () => {
  it.each([
    ['0.0838', 0.00005],
    ['-0.1712', 0.00005],
    ['101418', 0.5],
    ['1.2e3', 50],
    ['1.7894e-05', 5e-10],
  ])('takes half a unit of the last place of %s', (printed, half) => {
    expect(halfLastPlace(printed)).toBeCloseTo(half, 15)
  })

  it('accepts what rounds to the figure and nothing else', () => {
    expectPrinted(0.08384, '0.0838')
    expectPrinted(0.08376, '0.0838')
    expect(() => expectPrinted(0.08386, '0.0838')).toThrow('published 0.0838')
    expect(() => expectPrinted(Number.NaN, '0.0838')).toThrow('is NaN')
  })

  it('refuses what is no printed number', () => {
    expect(() => halfLastPlace('about 3')).toThrow('"about 3" is not a printed number')
  })
})
