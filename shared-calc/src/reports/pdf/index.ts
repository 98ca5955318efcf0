export type { PdfFonts } from './pdf-document.js'
export { type SummaryPdf, type SummaryPdfOptions, writeSummaryPdf } from './write-summary-pdf.js'
