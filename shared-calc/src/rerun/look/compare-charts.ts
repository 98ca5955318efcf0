import { computedAgrees } from '../agreement.js'
import type { Difference } from '../report.js'
import type { ChartLook, SeriesLook } from './chart-look.js'
import { seen, settingDifferences } from './seen-difference.js'

/** Texts on points, which some programs lose when they save. */
const LABELS = 'text labels'

/** Series by series, in their order: name, cells, stored values, marks; then titles and axes. */
export function compareCharts(sheet: string, issued: ChartLook, now: ChartLook, place: string): Difference[] {
  const about = `chart on sheet ${sheet}, `
  const count = Math.max(issued.series.length, now.series.length)
  const series = Array.from({ length: count }, (_, i) => {
    const [a, b] = [issued.series[i], now.series[i]]
    const name = `${about}series ${i + 1}`
    if (!a) return [seen('drawing', `${name} was added`, place, null, b?.name ?? '')]
    if (!b) return [seen('drawing', `${name} is missing`, place, a.name, null)]
    return compareSeries(a, b, `${name}, `, place)
  })
  const settings = new Map(
    [...now.settings].filter(([key, value]) => issued.settings.has(key) && !(key === LABELS && value === '')),
  )
  const wanted = new Map(
    [...issued.settings].filter(
      ([key]) => settings.has(key) || !(key === LABELS || key.endsWith('number format')),
    ),
  )
  const left = now.notInLegend.filter((entry) => !issued.notInLegend.includes(entry))
  const legend =
    left.length > 0
      ? [seen('drawing', `${about}series left out of the legend`, place, null, left.join(', '))]
      : []
  return [...series.flat(), ...legend, ...settingDifferences('drawing', about, place, wanted, settings)]
}

function compareSeries(a: SeriesLook, b: SeriesLook, about: string, place: string): Difference[] {
  const differences: Difference[] = []
  const pair = (label: string, issued: string, now: string): void => {
    if (issued !== now) differences.push(seen('drawing', about + label, place, issued, now))
  }
  if (!a.labels.includes(b.name)) pair('name', a.name, b.name)
  pair('labels at its points', a.atPoints, b.atPoints)
  pair('cells of the horizontal axis', a.x, b.x)
  pair('cells of the vertical axis', a.y, b.y)
  pair('stored values out of order', a.storedOddly, b.storedOddly)
  pair('mark', a.marker, b.marker)
  pair('lines added', String(a.others), String(b.others))
  pair('points formatted on their own', String(a.odd), String(b.odd))
  pair('smoothed', a.smooth ? 'yes' : 'no', b.smooth ? 'yes' : 'no')
  if (a.line !== undefined && b.line !== undefined) pair('line', a.line, b.line)
  if (a.fill !== undefined && b.fill !== undefined) pair('fill of the columns', a.fill, b.fill)
  if (differsMuch(a.lineWidth, b.lineWidth))
    pair('width of the line, points', String(a.lineWidth), String(b.lineWidth))
  if (differsMuch(a.dotSize, b.dotSize))
    pair('size of the marks, points', String(a.dotSize), String(b.dotSize))
  if (a.dot !== undefined && b.dot !== undefined) pair('colour of the marks', a.dot, b.dot)
  if (a.x === b.x && differ(a.xStored, b.xStored))
    pair('stored values, horizontal', text(a.xStored), text(b.xStored))
  if (a.y === b.y && differ(a.yStored, b.yStored))
    pair('stored values, vertical', text(a.yStored), text(b.yStored))
  return differences
}

/** Programs round sizes; beyond half or double something is hidden, or covered. */
const differsMuch = (a: number | undefined, b: number | undefined): boolean =>
  a !== undefined && b !== undefined && (b < a / 1.9 || b > a * 1.9)

/** Some programs store no values: then there is nothing to see but what the cells give. */
const differ = (issued: readonly number[], now: readonly number[]): boolean =>
  now.length > 0 &&
  (issued.length !== now.length ||
    issued.some((value, i) => computedAgrees(now[i] ?? Number.NaN, value) === 'differs'))

const text = (values: readonly number[]): string => values.map((value) => value.toPrecision(6)).join(', ')
