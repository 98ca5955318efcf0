import { evaluateWorked } from '../../assessment/evaluate.js'
import type { Evaluation, TestRecord } from '../../contract/record/index.js'
import { REPORT } from '../workbook/report-sheet.js'
import { SUMMARY } from '../workbook/summary-input.js'
import { layOutSummary, type SummaryOptions } from '../workbook/write-summary.js'
import { drawSheet } from './draw-sheet.js'
import { pageModel } from './page-model.js'
import { bytesOfPdf, newPdf, type Pdf, type PdfFonts } from './pdf-document.js'

export interface SummaryPdfOptions extends Omit<SummaryOptions, 'sign'> {
  readonly fonts: PdfFonts
}

export interface SummaryPdf {
  readonly bytes: Uint8Array
  readonly evaluation: Evaluation
  /** Characters of the texts that the fonts have no picture of; they are drawn as empty boxes. */
  readonly lacking: readonly string[]
}

/**
 * Summary and test report as an accessible PDF on A4: tagged, fonts embedded, the curve as lines. It is drawn from the same
 * cells as the workbook, so that both say the same. The same record gives the same bytes.
 * @param record - a record that `parseRecord` has checked
 * @throws InputError when the record cannot be evaluated
 */
export async function writeSummaryPdf(
  record: TestRecord,
  { fonts, cells, findings = [], pictures, uncertainty }: SummaryPdfOptions,
): Promise<SummaryPdf> {
  const worked = evaluateWorked(record, {
    ...(cells && { cells }),
    findings: [...findings, ...(pictures?.findings ?? [])],
    ...(uncertainty && { uncertainty }),
  })
  const { workbook, chart, pictures: placed } = await layOutSummary(record, worked, undefined, pictures)
  const pdf = await newPdf(fonts, {
    title: workbook.title,
    author: workbook.creator,
    subject: workbook.subject,
    recordDigest: worked.evaluation.recordDigest,
    dated: workbook.created,
  })
  const lacking = new Set<string>()
  for (const name of [SUMMARY, REPORT]) {
    const sheet = workbook.getWorksheet(name)
    if (!sheet) continue
    const drawn = {
      ...(chart.sheetName === name && { chart }),
      pictures: placed.filter(({ sheetName }) => sheetName === name),
    }
    for (const character of drawSheet(pdf, pageModel(sheet), drawn)) lacking.add(character)
  }
  numberPages(pdf, workbook.title)
  return { bytes: await bytesOfPdf(pdf), evaluation: worked.evaluation, lacking: [...lacking] }
}

function numberPages(pdf: Pdf, title: string): void {
  const { count } = pdf.bufferedPageRange()
  for (let page = 0; page < count; page += 1) {
    pdf.switchToPage(page)
    pdf.markContent('Artifact', { type: 'Pagination' })
    pdf.font('regular').fontSize(7).fillColor('#52606D')
    pdf.text(title, 36, 812, { width: 400, height: 9, ellipsis: true })
    pdf.text(`page ${page + 1} of ${count}`, 436, 812, { width: 123, align: 'right' })
    pdf.endMarkedContent()
  }
}
