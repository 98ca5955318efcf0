import { describe, expect, it } from 'vitest'
import { addCharts } from '../../shared-calc/src/reports/workbook/chart/add-charts.js'
import type { ChartDescription } from '../../shared-calc/src/reports/workbook/chart/description.js'
import { printStyle } from '../../shared-calc/src/reports/workbook/chart/print-style.js'
import { attributesOf } from '../../shared-calc/src/reports/workbook/chart/relationships.js'
import { readParts, textOf } from '../../shared-calc/src/reports/workbook/zip/parts.js'
import { inventedWorkbook, leakageChart, SHEET } from './chart-data'
import { orderProblems } from './schema-order'

const workbook = await inventedWorkbook()

function chartXml(change: Partial<ChartDescription> = {}): string {
  return textOf(readParts(addCharts(workbook, [{ ...leakageChart(), ...change }])), 'xl/charts/chart1.xml')
}

const overCategories: Partial<ChartDescription> = {
  xAxis: { title: 'Pressure difference, Pa', category: 'number' },
  yAxis: { title: 'Air flow, m³/h' },
  series: leakageChart().series.map(({ style: _, ...series }) => series),
}
const KINDS: [string, Partial<ChartDescription>][] = [
  ['log–log scatter', {}],
  ['line', { ...overCategories, kind: 'line' }],
  ['column', { ...overCategories, kind: 'column' }],
  ['line over dates', { ...overCategories, kind: 'line', xAxis: { title: 'Month', category: 'date' } }],
  ['column over text', { ...overCategories, kind: 'column', xAxis: { title: 'Class' } }],
]

describe('chart part', () => {
  it.each(KINDS)('keeps the element order of ECMA-376 Part 1 for a %s', (_, change) => {
    expect(orderProblems(chartXml(change))).toEqual([])
  })

  it('has a check of element order that can fail', () => {
    const shuffled = chartXml().replace(/(<c:scaling>.*?<\/c:scaling>)(<c:delete val="0"\/>)/, '$2$1')
    expect(orderProblems(shuffled)).toEqual(['chartSpace/chart/plotArea/valAx: scaling is out of place'])
  })

  it('gives both axes base 10, the limits asked for, gridlines, and lets them cross at the minimum', () => {
    const xml = chartXml()
    const values = (name: string) => attributesOf(xml, name).map(({ val }) => val)
    expect(values('logBase')).toEqual(['10', '10'])
    expect([values('min'), values('max')]).toEqual([
      ['10', '100'],
      ['100', '10000'],
    ])
    expect(values('crosses')).toEqual(['min', 'min'])
    expect(attributesOf(xml, 'majorGridlines')).toHaveLength(2)
  })

  it('takes exactly the series that are to stay out of the legend out of it', () => {
    const entries = [...chartXml().matchAll(/<c:legendEntry><c:idx val="(\d)"\/><c:delete val="1"\/>/g)]
    expect(entries.map(([, position]) => position)).toEqual(['2', '3', '6', '7'])
    expect(chartXml({ legend: 'none' })).not.toContain('c:legend')
  })

  it('refers to cells absolutely, with the sheet name quoted and its apostrophe doubled, and keeps the values', () => {
    const xml = chartXml()
    expect(xml).toContain(`<c:f>'Owner''s &quot;log&quot; &amp; &lt;notes&gt;'!$A$3:$A$10</c:f>`)
    expect(xml).toContain('<c:ptCount val="8"/><c:pt idx="0"><c:v>12</c:v></c:pt>')
  })

  it('escapes every text and writes a line break as a paragraph', () => {
    const xml = chartXml({ title: 'Flow <&> "curve"\nsecond line' })
    expect(xml).toContain('<a:t>Flow &lt;&amp;&gt; &quot;curve&quot;</a:t>')
    expect(xml).toContain('<a:t>second line</a:t>')
  })

  it('leaves an empty cell out of the cached values but counts it', () => {
    const [first, ...rest] = leakageChart().series
    const series = first ? [{ ...first, yCache: [null, ...(first.yCache ?? []).slice(1)] }, ...rest] : []
    expect(chartXml({ series })).toContain('<c:ptCount val="8"/><c:pt idx="1">')
  })

  it('tells default series apart without colour: another marker, dash and bar filling for each', () => {
    const styles = [0, 1, 2, 3, 4].map(printStyle)
    const distinct = (of: (style: (typeof styles)[number]) => unknown) => new Set(styles.map(of)).size
    expect(distinct(({ marker }) => marker.shape)).toBe(styles.length)
    expect(distinct(({ line }) => line.dash)).toBe(styles.length)
    expect(distinct(({ bar }) => bar.pattern)).toBe(styles.length)
  })
})

describe('a chart that cannot be drawn as meant', () => {
  const first = leakageChart().series.slice(0, 1)
  const change = (rest: object): Partial<ChartDescription> => ({
    series: first.map((s) => ({ ...s, ...rest })),
  })
  const yAxis = { title: '', log: true }
  it.each<[string, Partial<ChartDescription>, RegExp]>([
    ['NaN as a value', change({ yCache: [Number.NaN, 1, 1, 1, 1, 1, 1, 1] }), /cannot hold the number NaN/],
    [
      'an infinite limit',
      { yAxis: { ...yAxis, max: Number.POSITIVE_INFINITY } },
      /yAxis: the limits Infinity/,
    ],
    ['a limit of 0 on a logarithmic axis', { yAxis: { ...yAxis, min: 0 } }, /yAxis: .*above 0/],
    [
      'a value below 0 on a logarithmic axis',
      change({ yCache: [-3, 1, 1, 1, 1, 1, 1, 1] }),
      /-3 of series "Readings/,
    ],
    ['limits the wrong way round', { yAxis: { title: '', min: 5, max: 4 } }, /min 5 is not below max 4/],
    ['a cache of another length', change({ yCache: [1] }), /has 8 cells and 1 cached/],
    ['text where numbers belong', change({ xCache: ['a', 1, 1, 1, 1, 1, 1, 1] }), /the text "a"/],
    [
      'a block of cells',
      change({ yRef: { sheet: SHEET, range: 'A1:B9' } }),
      /A1:B9 is not one column or row/,
    ],
    ['a cell beyond the sheet', change({ yRef: { sheet: SHEET, range: 'XFE1:XFE2' } }), /XFE1:XFE2/],
    ['an unknown sheet', change({ xRef: { sheet: 'Nowhere', range: 'A3:A10' } }), /no sheet "Nowhere"/],
    ['a logarithmic category axis', { kind: 'line', xAxis: { title: '', log: true } }, /category axis/],
    ['an anchor without area', { anchor: { fromCol: 1, fromRow: 1, toCol: 1, toRow: 9 } }, /anchor/],
    ['a control character', { title: 'a\u0001' }, /U\+0001/],
    ['half a character', change({ name: '\ud800' }), /U\+D800/],
    [
      'a colour by name',
      change({ style: { line: { colour: 'red', width: 1, dash: 'solid' } } }),
      /RRGGBB, not "red"/,
    ],
    ['no series', { series: [] }, /no series/],
  ])('is refused with a RangeError: %s', (_, wrong, message) => {
    expect(() => chartXml(wrong)).toThrow(RangeError)
    expect(() => chartXml(wrong)).toThrow(message)
  })
})
