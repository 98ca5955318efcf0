import type PDFKit from 'pdfkit'

/** Fonts as TrueType files; they are embedded, cut down to the characters used. */
export interface PdfFonts {
  readonly regular: Uint8Array
  readonly bold: Uint8Array
}

export type Pdf = InstanceType<typeof PDFKit>

/** What the file says about itself. The date makes the same test give the same bytes. */
export interface PdfAbout {
  readonly title: string
  readonly author: string
  readonly subject: string
  /** Names the record among the keywords. */
  readonly recordDigest: string
  readonly dated: Date
}

/** An empty A4 document: tagged, in British English, with its title shown. Text has to be put at places of its own. */
export async function newPdf(
  fonts: PdfFonts,
  { title, author, subject, recordDigest, dated }: PdfAbout,
): Promise<Pdf> {
  const { default: PDFDocument } = await import('pdfkit')
  const pdf = new PDFDocument({
    size: 'A4',
    margin: 0,
    autoFirstPage: false,
    bufferPages: true,
    pdfVersion: '1.7',
    subset: 'PDF/UA' as 'PDF/A-2a',
    tagged: true,
    lang: 'en-GB',
    displayTitle: true,
    // None to begin with. Left out, it would load one of its own, which is not embedded; given as bytes, it would be read again at every
    // text, because it is known by no name: nine tenths of the time of a PDF.
    font: null as unknown as string,
    info: {
      Title: title,
      Author: author,
      Subject: subject,
      Keywords: `record ${recordDigest}`,
      Creator: 'Draughtbook',
      Producer: 'Draughtbook, pdfkit',
      CreationDate: dated,
      ModDate: dated,
    },
  })
  pdf.registerFont('regular', fonts.regular as unknown as string)
  pdf.registerFont('bold', fonts.bold as unknown as string)
  return pdf
}

/** The finished file. */
export function bytesOfPdf(pdf: Pdf): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = []
    pdf.on('data', (chunk: Uint8Array) => chunks.push(chunk))
    pdf.on('error', reject)
    pdf.on('end', () => {
      const all = new Uint8Array(chunks.reduce((sum, { length }) => sum + length, 0))
      let at = 0
      for (const chunk of chunks) {
        all.set(chunk, at)
        at += chunk.length
      }
      resolve(all)
    })
    pdf.end()
  })
}

/** Draws decoration: a screen reader skips it. */
export function decorate(pdf: Pdf, draw: () => void): void {
  pdf.markContent('Artifact', { type: 'Layout' })
  draw()
  pdf.endMarkedContent()
}

/** Characters that a font has no picture of; they are drawn as an empty box. */
export function charactersWithout(pdf: Pdf, font: 'regular' | 'bold', text: string): string[] {
  pdf.font(font)
  const { font: face } = (
    pdf as unknown as { _font: { font: { hasGlyphForCodePoint(code: number): boolean } } }
  )._font
  return [...text].filter((character) => {
    const code = character.codePointAt(0) ?? 0
    return code > 0x20 && !face.hasGlyphForCodePoint(code)
  })
}
