import { readFile } from 'node:fs/promises'
import { describe, expect, it } from 'vitest'
import { attributesOf } from '../../shared-calc/src/reports/workbook/chart/relationships.js'
import { readParts, textOf } from '../../shared-calc/src/reports/workbook/zip/parts.js'
import { recalculate, toPdf } from '../support/libreoffice'
import { pdfPages } from '../support/pdf-pages'
import { runTool } from '../support/run-tool'
import { chartedWorkbook } from './chart-data'

describe('a leakage chart in LibreOffice', () => {
  it('is loaded and saved again as one scatter chart: eight series, two logarithmic axes, four names in the legend', async () => {
    const parts = readParts(await recalculate(await chartedWorkbook()))
    const charts = [...parts.keys()].filter((path) => path.startsWith('xl/charts/chart'))
    expect(charts).toHaveLength(1)
    const xml = textOf(parts, charts[0] ?? '')
    expect(attributesOf(xml, 'scatterChart')).toHaveLength(1)
    expect(attributesOf(xml, 'ser')).toHaveLength(8)
    expect(attributesOf(xml, 'logBase').map(({ val }) => val)).toEqual(['10', '10'])
    expect(attributesOf(xml, 'legendEntry')).toHaveLength(4)
    expect(xml).not.toContain('#REF')
  })

  it('prints its title, axes and legend, and nothing that was taken out of the legend', async () => {
    const pdf = await toPdf(await chartedWorkbook())
    const [page, ...otherSheet] = await pdfPages(pdf, 'leakage-chart')
    expect(otherSheet).toHaveLength(1)
    const text = await runTool(
      'pdftotext',
      ['-layout', (page ?? '').replace(/page-\d+\.png$/, 'workbook.pdf'), '-'],
      'poppler-utils',
    )
    for (const shown of [
      'Air flow through the envelope',
      'Pressure difference, Pa',
      'Fitted line, pressurisation',
    ]) {
      expect(text).toContain(shown)
    }
    expect(text).not.toContain('Lower limit')
    // A PNG file begins with these eight bytes (ISO/IEC 15948, 5.2).
    const png = await readFile(page ?? '')
    expect([...png.subarray(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10])
  })
})
