import { mkdir, readdir, rm, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { runTool } from './run-tool'

const OUTPUT = fileURLToPath(new URL('../output/', import.meta.url))

/**
 * Pages of a PDF as PNG pictures, to check: test/output/<name>/page-1.png and so on, in page order.
 * What an earlier run left there under the same name is replaced.
 */
export async function pdfPages(pdf: Uint8Array, name: string, dotsPerInch = 110): Promise<string[]> {
  const folder = join(OUTPUT, name)
  await rm(folder, { recursive: true, force: true })
  await mkdir(folder, { recursive: true })
  const file = join(folder, 'workbook.pdf')
  await writeFile(file, pdf)
  await runTool('pdftoppm', ['-png', '-r', String(dotsPerInch), file, join(folder, 'page')], 'poppler-utils')
  // pdftoppm pads page numbers to one width, so the order of names is the order of pages.
  const pages = (await readdir(folder)).filter((entry) => entry.endsWith('.png')).sort()
  if (pages.length === 0) throw new Error('the PDF has no pages')
  return pages.map((page) => join(folder, page))
}
