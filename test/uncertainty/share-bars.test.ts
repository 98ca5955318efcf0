import { describe, expect, it } from 'vitest'
import { shareBars } from '../../addin/src/chart/share-bars'

const bars = [
  { label: 'wind & gusts', share: 0.3, scope: 'shared' },
  { label: 'flow calibration', share: 0.65, scope: 'shared' },
  { label: 'scatter', share: 0.0496, scope: 'run' },
  { label: 'humidity', share: 0.0002, scope: 'shared' },
  { label: 'barometer', share: 0.0002, scope: 'shared' },
] as const

describe('the bars of an uncertainty budget', () => {
  const svg = shareBars(bars, 400)
  const widths = [...svg.matchAll(/<rect class="bar (\w+)"[^>]* width="([\d.]+)"/g)].map(
    ([, scope, width]) => ({
      scope,
      width: Number(width),
    }),
  )

  it('stand largest first, as long as their shares, in the look of what they are', () => {
    expect(widths.map(({ scope }) => scope)).toEqual(['shared', 'shared', 'run', 'shared'])
    expect((widths[0]?.width ?? 0) / (widths[1]?.width ?? 1)).toBeCloseTo(0.65 / 0.3, 1)
  })

  it('put together what is too small to see, and round nothing down to none', () => {
    expect(svg).toContain('2 others together')
    expect(svg).toContain('&lt; 1 %')
  })

  it('escape what they are given and tell it in words to those who do not see it', () => {
    expect(svg).toContain('wind &amp; gusts')
    expect(svg).not.toContain('wind & gusts')
    expect(svg).toMatch(
      /role="img" aria-label="Share of each cause: flow calibration 65 %; wind &amp; gusts 30 %/,
    )
  })
})
