import { type Parts, readParts, setText, textOf, writeParts } from '../zip/parts.js'
import { chartPart } from './chart-part.js'
import { checkChart } from './check.js'
import type { ChartDescription } from './description.js'
import { chartFrame } from './frame.js'
import { addNumberedPart, sheetParts } from './package-parts.js'
import { addRelationship, appendToRoot, attributesOf } from './relationships.js'
import { drawingOf } from './sheet-drawing.js'

const CHART_TYPE = 'application/vnd.openxmlformats-officedocument.drawingml.chart+xml'

/**
 * Adds native charts to a finished workbook and leaves every part it need not touch byte for byte as it was.
 *
 * @param xlsx - the workbook, as exceljs or a spreadsheet program wrote it; not changed
 * @param charts - one or more, drawn in this order
 * @returns the workbook with its charts; the same input always gives the same bytes
 * @throws RangeError naming the chart, sheet, range or part: not a workbook, unknown sheet, a number that is
 * not finite, a value without place on a logarithmic axis, a cache that does not match its range, bad style
 */
export function addCharts(xlsx: Uint8Array, charts: readonly ChartDescription[]): Uint8Array {
  const parts = readParts(xlsx)
  addChartsTo(parts, charts)
  return writeParts(parts)
}

/** The same for a workbook that is unpacked already: its parts are changed. */
export function addChartsTo(parts: Parts, charts: readonly ChartDescription[]): void {
  const sheets = sheetParts(parts)
  for (const chart of charts) {
    checkChart(chart, [...sheets.keys()])
    addChart(parts, sheets.get(chart.sheetName) ?? '', chart)
  }
}

function addChart(parts: Parts, sheet: string, chart: ChartDescription): void {
  const drawing = drawingOf(parts, sheet)
  const path = addNumberedPart(parts, 'xl/charts/chart', CHART_TYPE, chartPart(chart))
  const relationship = addRelationship(parts, drawing, 'chart', path)
  const text = textOf(parts, drawing)
  const ids = attributesOf(text, 'cNvPr').map(({ id }) => Number(id))
  const frame = chartFrame(chart, Math.max(1, ...ids) + 1, relationship)
  setText(parts, drawing, appendToRoot(text, frame, drawing))
}
