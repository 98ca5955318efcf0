import { readFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import type { PdfFonts } from '@draughtbook/shared-calc/pdf'

const PACKAGE = 'dejavu-fonts-ttf/ttf'

/** The fonts of a PDF, from their package. Its letters are as narrow as those that the workbook is laid out for. */
export async function pdfFonts(): Promise<PdfFonts> {
  const { resolve } = createRequire(import.meta.url)
  const [regular, bold] = await Promise.all(
    ['DejaVuSansCondensed.ttf', 'DejaVuSansCondensed-Bold.ttf'].map(
      async (file) => new Uint8Array(await readFile(resolve(`${PACKAGE}/${file}`))),
    ),
  )
  if (!regular || !bold) throw new Error(`package ${PACKAGE} lacks a font`)
  return { regular, bold }
}
