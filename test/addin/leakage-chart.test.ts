import { SaxesParser } from 'saxes'
import { describe, expect, it } from 'vitest'
import { type ChartData, leakageChart } from '../../addin/src/chart/leakage-chart.js'
import { logScale } from '../../addin/src/chart/log-scale.js'

const data: ChartData = {
  runs: [
    {
      direction: 'depressurisation',
      points: [
        { pressure_Pa: 12, flow_m3_h: 40, label: 'a <b> & "c"' },
        { pressure_Pa: 60, flow_m3_h: 115, label: 'second', flagged: true },
      ],
      curve: [
        [11, 38, 37, 39],
        [65, 121, 118, 124],
      ],
    },
  ],
  limit: { pressure_Pa: 50, flow_m3_h: 140, label: 'limit' },
}

/** Elements of the chart with their attributes; throws where the text is no well-formed XML. */
function elements(svg: string): { name: string; attributes: Record<string, string> }[] {
  const found: { name: string; attributes: Record<string, string> }[] = []
  const parser = new SaxesParser()
  parser.on('error', (error) => {
    throw error
  })
  parser.on('opentag', ({ name, attributes }) =>
    found.push({ name, attributes: attributes as Record<string, string> }),
  )
  parser.write(svg).close()
  return found
}

describe('leakage chart', () => {
  it('is well-formed whatever the labels hold, and carries no style of its own', () => {
    const all = elements(leakageChart(data, 340, 220))
    expect(all.some(({ attributes }) => attributes['data-label'] === 'a <b> & "c"')).toBe(true)
    expect(all.filter(({ attributes }) => 'style' in attributes || 'onload' in attributes)).toEqual([])
  })

  it('draws a power law as a straight line on its axes', () => {
    const curve = [5, 10, 20, 40, 80].map((p) => [p, 3 * p ** 0.6, 3 * p ** 0.6, 3 * p ** 0.6] as const)
    const svg = leakageChart({ runs: [{ direction: 'pressurisation', points: [], curve }] }, 600, 400)
    const line = elements(svg).find(({ attributes }) => attributes.class === 'fit')?.attributes.points ?? ''
    const points = line.split(' ').map((pair) => pair.split(',').map(Number) as [number, number])
    const slopes = points
      .slice(1)
      .map(([x, y], i) => (y - (points[i]?.[1] ?? 0)) / (x - (points[i]?.[0] ?? 0)))
    for (const slope of slopes) expect(slope).toBeCloseTo(slopes[0] ?? 0, 2)
  })

  it('keeps every mark inside its frame', () => {
    const all = elements(leakageChart(data, 340, 220))
    const frame = all.find(({ attributes }) => attributes.class === 'frame')?.attributes ?? {}
    const [left, top] = [Number(frame.x), Number(frame.y)]
    const [right, bottom] = [left + Number(frame.width), top + Number(frame.height)]
    const marks = all.filter(({ name, attributes }) => name === 'circle' && attributes.class === 'mark')
    expect(marks).toHaveLength(2)
    for (const { attributes } of marks) {
      expect(Number(attributes.cx)).toBeGreaterThan(left)
      expect(Number(attributes.cx)).toBeLessThan(right)
      expect(Number(attributes.cy)).toBeGreaterThan(top)
      expect(Number(attributes.cy)).toBeLessThan(bottom)
    }
  })

  it('says so where there is nothing to draw', () => {
    expect(leakageChart({ runs: [] }, 300, 200)).toContain('No readings yet')
  })
})

describe('logarithmic scale', () => {
  it('puts the geometric mean of its ends in the middle', () => {
    const scale = logScale([10, 100], 0, 200, 20)
    expect(scale.at(Math.sqrt(scale.from * scale.to))).toBeCloseTo(100, 9)
  })

  it.each([
    [[9, 70], 300],
    [[0.004, 0.03], 200],
    [[12, 4000], 250],
  ])('labels ticks of %j without crowding on %i px', (values, width) => {
    const scale = logScale(values, 0, width, 22)
    const places = scale.ticks.filter(({ labelled }) => labelled).map(({ value }) => scale.at(value))
    expect(places.length).toBeGreaterThan(1)
    for (const [i, place] of places.entries())
      if (i > 0) expect(place - (places[i - 1] ?? 0)).toBeGreaterThanOrEqual(22)
    expect(scale.from).toBeLessThanOrEqual(Math.min(...values))
    expect(scale.to).toBeGreaterThanOrEqual(Math.max(...values))
  })
})
