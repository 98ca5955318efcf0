import { readFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { extname } from 'node:path'
import { digestOf } from '@draughtbook/shared-calc'
import { type PdfFonts, writeSummaryPdf } from '@draughtbook/shared-calc/pdf'
import { writeAtomically } from '../files/write-atomically.js'
import { cannotWrite, UsageError } from './errors.js'
import { guardOld, type OutputWish, outputPath } from './output-path.js'
import type { PicturedTest } from './read-pictures.js'

export interface PdfWish extends OutputWish {
  /** Path asked for with --pdf; true where it has the name of the workbook. */
  readonly pdf?: string | true
  readonly uncertainty?: boolean
}

/**
 * Writes summary and test report of each test of a file as a PDF. Resolves to the paths, each with what has to be said about it.
 * Throws UsageError when one cannot be written.
 */
export async function writePdfs(
  input: string,
  tests: readonly PicturedTest[],
  wish: PdfWish,
): Promise<{ path: string; notes: string[] }[]> {
  if (tests.length > 1 && typeof wish.pdf === 'string')
    throw new UsageError(
      `${input} has ${tests.length} tests, so --pdf cannot name their files; give --pdf without a name`,
    )
  const paths: string[] = []
  for (const [i, { record }] of tests.entries()) {
    const path = await pdfPath(input, wish, tests.length === 1 ? '' : `-${i + 1}`)
    const named = typeof wish.pdf === 'string' ? wish.pdf : undefined
    await guardOld(
      path,
      { ...wish, out: named },
      {
        kind: 'Draughtbook PDF',
        ofKind: (old) => /record [0-9a-f]{64}/.test(Buffer.from(old).toString('latin1')),
        ofSameTest: (old) => Buffer.from(old).includes(`record ${digestOf(record)}`),
      },
    )
    paths.push(path)
  }
  const fonts = await pdfFonts()
  const written: { path: string; notes: string[] }[] = []
  for (const [i, { record, cells, findings, pictures }] of tests.entries()) {
    const path = paths[i] ?? ''
    const { bytes, lacking } = await writeSummaryPdf(record, {
      fonts,
      cells,
      findings,
      ...(pictures && { pictures }),
      ...(wish.uncertainty && { uncertainty: true }),
    })
    await writeAtomically(path, bytes).catch((error: unknown) => {
      throw cannotWrite(path, error)
    })
    const notes =
      lacking.length > 0
        ? [`${path}: the PDF font lacks ${lacking.join(' ')}; each appears as an empty box`]
        : []
    written.push({ path, notes })
  }
  return written
}

/** The path asked for, else that of the workbook with the ending .pdf. */
async function pdfPath(input: string, wish: PdfWish, suffix: string): Promise<string> {
  if (typeof wish.pdf !== 'string') return (await outputPath(input, wish, suffix)).replace(/\.xlsx$/i, '.pdf')
  if (extname(wish.pdf).toLowerCase() !== '.pdf')
    throw new UsageError(
      `--pdf must name a .pdf file, not ${wish.pdf || '""'}; to give it no name, put it after the input`,
    )
  return wish.pdf
}

const PACKAGE = 'dejavu-fonts-ttf/ttf'

/** The fonts of a PDF, from their package. Its letters are as narrow as those that the workbook is laid out for. */
async function pdfFonts(): Promise<PdfFonts> {
  const { resolve } = createRequire(import.meta.url)
  const [regular, bold] = await Promise.all(
    ['DejaVuSansCondensed.ttf', 'DejaVuSansCondensed-Bold.ttf'].map(
      async (file) => new Uint8Array(await readFile(resolve(`${PACKAGE}/${file}`))),
    ),
  )
  if (!regular || !bold) throw new Error(`package ${PACKAGE} lacks a font`)
  return { regular, bold }
}
