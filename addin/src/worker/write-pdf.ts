import { type PdfFonts, writeSummaryPdf } from '@draughtbook/shared-calc/pdf'
import { choosePictures } from '@draughtbook/shared-calc/workbook'
import regularAddress from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf?url'
import boldAddress from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf?url'
import type { ReportParts } from './messages.js'

/** Summary and test report as a PDF, from the same pages as the workbook and the command. */
export async function writePdfFor({
  record,
  cells,
  findings,
  photos,
  firm,
}: ReportParts): Promise<{ bytes: Uint8Array; lacking: readonly string[] }> {
  const pictures =
    (photos ?? firm)
      ? await choosePictures(record, { ...(photos && { photos }), ...(firm && { firm }) })
      : undefined
  return writeSummaryPdf(record, {
    fonts: await pdfFonts(),
    cells,
    findings,
    ...(pictures && { pictures }),
  })
}

let fetched: Promise<PdfFonts> | undefined

/** The fonts, fetched once from where the pane comes from. */
function pdfFonts(): Promise<PdfFonts> {
  fetched ??= Promise.all([regularAddress, boldAddress].map(bytesAt)).then(([regular, bold]) => {
    if (!regular || !bold) throw new Error('a font of the PDF is missing')
    return { regular, bold }
  })
  // A fetch that failed is tried again next time.
  fetched.catch(() => {
    fetched = undefined
  })
  return fetched
}

async function bytesAt(address: string): Promise<Uint8Array> {
  const answer = await fetch(new URL(address, import.meta.url))
  if (!answer.ok) throw new Error(`the fonts of the PDF could not be fetched: ${answer.status}`)
  return new Uint8Array(await answer.arrayBuffer())
}
