import { mkdir, writeFile } from 'node:fs/promises'
import { parseLayout, readLog, seriesChart } from '@draughtbook/shared-calc/log'
import { SaxesParser } from 'saxes'
import { describe, expect, it } from 'vitest'
import { seriesText } from './logs/series-text'

async function drawn() {
  const [test] = readLog(await seriesText.write(), seriesText.fileName, {
    layout: parseLayout(seriesText.layout),
  }).tests
  const [series] = test?.series ?? []
  if (!series) throw new Error('no series')
  return { series, svg: seriesChart(series) }
}

describe('the picture of a raw series', () => {
  it('is well-formed, without script, style or anything from outside', async () => {
    const { svg } = await drawn()
    const names = new Set<string>()
    const parser = new SaxesParser()
    parser.on('error', (error) => {
      throw error
    })
    parser.on('opentag', ({ name }) => names.add(name))
    parser.write(svg).close()
    expect([...names].sort()).toEqual(['desc', 'g', 'line', 'path', 'rect', 'svg', 'text', 'title'])
    expect(svg).not.toMatch(/href|style=|url\(/)
    await mkdir('test/output/series', { recursive: true })
    await writeFile('test/output/series/series.svg', svg)
  })

  it('marks every station where it stands in time, and says what it is', async () => {
    const { series, svg } = await drawn()
    const marks = [...svg.matchAll(/<g class="station ([a-z-]+)"><title>([^<]+)<\/title><rect x="([\d.]+)"/g)]
    expect(marks.map(([, kind]) => kind)).toEqual([
      'zero-flow',
      'reading',
      'reading',
      'reading',
      'rejected',
      'reading',
      'zero-flow',
    ])
    expect(marks[1]?.[2]).toBe('reading: -60.0 Pa from 40 samples')
    const [start = 0, end = 1] = [series.series.time_s[0], series.series.time_s.at(-1)]
    for (const [index, [, , , x]] of marks.entries()) {
      const time = series.series.time_s[series.stations[index]?.window.first ?? 0] ?? 0
      expect(Number(x)).toBeCloseTo(56 + ((time - start) / (end - start)) * (720 - 56 - 12), 0)
    }
    expect(svg).toContain('<desc>4 readings averaged, 2 zero-flow stretches, 1 rejected</desc>')
  })
})
