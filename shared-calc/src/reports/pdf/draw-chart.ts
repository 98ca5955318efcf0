import type { ChartDescription, LineStyle, MarkerStyle } from '../workbook/chart/description.js'
import { printStyle } from '../workbook/chart/print-style.js'
import type { Pdf } from './pdf-document.js'

interface Box {
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
}

const ROOM = { left: 54, right: 24, top: 8, bottom: 56 } as const
const SMALL = 7
const INK = '#1F2933'
const GRID = '#D3D9DE'
const DASHES: Readonly<Record<LineStyle['dash'], readonly number[]>> = {
  solid: [],
  dash: [6, 3],
  sysDash: [3, 2],
  sysDot: [1.5, 2],
  dashDot: [6, 2, 1.5, 2],
  lgDash: [9, 3],
  lgDashDot: [9, 2, 1.5, 2],
}

/** Draws a scatter chart as lines and letters, from the same description as the workbook's chart. */
export function drawChart(pdf: Pdf, chart: ChartDescription, box: Box): void {
  const plot = {
    left: box.left + ROOM.left,
    top: box.top + ROOM.top,
    width: box.width - ROOM.left - ROOM.right,
    height: box.height - ROOM.top - ROOM.bottom,
  }
  const place = placing(chart, plot)
  pdf.rect(plot.left, plot.top, plot.width, plot.height).lineWidth(0.6).stroke(INK)
  chart.series.forEach((series, i) => {
    const points = (series.xCache ?? []).flatMap((x, k) => {
      const y = series.yCache?.[k]
      return typeof x === 'number' && typeof y === 'number' ? [place(x, y)] : []
    })
    const { line, marker } = series.style ?? { marker: printStyle(i).marker }
    if (line) drawLine(pdf, points, line)
    if (marker) for (const [x, y] of points) drawMarker(pdf, x, y, marker)
    if (series.labels)
      for (const [k, text] of series.labels.texts.entries()) {
        const at = points[k]
        if (!at) continue
        if (!line && !marker) drawTick(pdf, plot, at, series.labels.position)
        label(pdf, text, at, series.labels.position)
      }
  })
  drawTitles(pdf, chart, box, plot)
  drawLegend(pdf, chart, box)
}

function placing({ xAxis, yAxis }: ChartDescription, plot: Box): (x: number, y: number) => [number, number] {
  const share = ({ min = 0, max = 1, log }: ChartDescription['xAxis'], value: number) => {
    const of = (one: number) => (log ? Math.log10(one) : one)
    return (of(value) - of(min)) / (of(max) - of(min))
  }
  return (x, y) => [plot.left + share(xAxis, x) * plot.width, plot.top + (1 - share(yAxis, y)) * plot.height]
}

/** A hairline across the plot at a labelled value. */
function drawTick(pdf: Pdf, plot: Box, [x, y]: [number, number], position: 'b' | 'l' | 'r' | 't'): void {
  if (position === 'b') pdf.moveTo(x, plot.top).lineTo(x, plot.top + plot.height)
  else pdf.moveTo(plot.left, y).lineTo(plot.left + plot.width, y)
  pdf.lineWidth(0.4).undash().stroke(GRID)
}

function drawLine(pdf: Pdf, points: readonly [number, number][], { colour, width, dash }: LineStyle): void {
  const [first, ...rest] = points
  if (!first) return
  pdf.moveTo(...first)
  for (const point of rest) pdf.lineTo(...point)
  const dashes = DASHES[dash]
  // The types know a single length only; pdfkit takes a list.
  if (dashes.length > 0) pdf.dash(dashes as unknown as number, {})
  pdf.lineWidth(width * 0.7).stroke(`#${colour}`)
  pdf.undash()
}

function drawMarker(pdf: Pdf, x: number, y: number, { shape, size, fill, outline }: MarkerStyle): void {
  const r = size * 0.36
  if (shape === 'circle') pdf.circle(x, y, r)
  else if (shape === 'square') pdf.rect(x - r, y - r, 2 * r, 2 * r)
  else if (shape === 'triangle') pdf.polygon([x, y - r], [x + r, y + r], [x - r, y + r])
  else if (shape === 'diamond') pdf.polygon([x, y - r], [x + r, y], [x, y + r], [x - r, y])
  else {
    const d = shape === 'x' ? r : 0
    pdf
      .moveTo(x - r, y - d)
      .lineTo(x + r, y + d)
      .moveTo(x - d, y + r)
      .lineTo(x + d, y - r)
    pdf.lineWidth(1).stroke(`#${outline}`)
    return
  }
  pdf.lineWidth(0.8).fillAndStroke(`#${fill}`, `#${outline}`)
}

function label(pdf: Pdf, text: string, [x, y]: [number, number], position: 'b' | 'l' | 'r' | 't'): void {
  pdf.font('regular').fontSize(SMALL).fillColor(INK)
  const width = pdf.widthOfString(text)
  const [left, top] = {
    b: [x - width / 2, y + 4],
    t: [x - width / 2, y - SMALL - 5],
    l: [x - width - 4, y - SMALL / 2 - 0.5],
    r: [x + 6, y - SMALL / 2 - 0.5],
  }[position] as [number, number]
  // On paper of its own, so that a curve behind it does not strike it through.
  pdf.rect(left - 1, top - 1, width + 2, SMALL + 2).fill('#FFFFFF')
  pdf.fillColor(INK).text(text, left, top, { lineBreak: false })
}

function drawTitles(pdf: Pdf, { xAxis, yAxis }: ChartDescription, box: Box, plot: Box): void {
  pdf
    .font('regular')
    .fontSize(SMALL + 0.5)
    .fillColor(INK)
  pdf.text(xAxis.title.trim(), plot.left, plot.top + plot.height + 16, { width: plot.width, align: 'center' })
  const middle: [number, number] = [box.left + 10, plot.top + plot.height / 2]
  pdf.save().rotate(-90, { origin: middle })
  pdf.text(yAxis.title.trim(), middle[0] - plot.height / 2, middle[1] - 4, {
    width: plot.height,
    align: 'center',
  })
  pdf.restore()
}

function drawLegend(pdf: Pdf, { series }: ChartDescription, box: Box): void {
  pdf.font('regular').fontSize(SMALL)
  const entries = series
    .map((one, i) => ({ ...one, style: one.style ?? { marker: printStyle(i).marker } }))
    .filter(({ inLegend }) => inLegend !== false)
    .map((one) => ({ ...one, width: 24 + pdf.widthOfString(one.name) + 12 }))
  const all = entries.reduce((sum, { width }) => sum + width, 0)
  // More entries than fit one line go on below.
  const perLine = all <= box.width ? entries.length : Math.ceil(entries.length / 2)
  for (let at = 0, top = box.top + box.height - 24; at < entries.length; at += perLine, top += 11) {
    const side = entries.slice(at, at + perLine)
    let left = box.left + (box.width - side.reduce((sum, { width }) => sum + width, 0)) / 2
    for (const { name, style, width } of side) {
      const y = top + SMALL / 2
      if (style.line)
        drawLine(
          pdf,
          [
            [left, y],
            [left + 20, y],
          ],
          style.line,
        )
      if (style.marker) drawMarker(pdf, left + 10, y, style.marker)
      pdf
        .font('regular')
        .fontSize(SMALL)
        .fillColor(INK)
        .text(name, left + 24, top - 0.5, { lineBreak: false })
      left += width
    }
  }
}
