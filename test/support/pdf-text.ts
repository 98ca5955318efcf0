import { execFile } from 'node:child_process'
import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { promisify } from 'node:util'
import { toPdf } from './libreoffice.js'
import { runTool } from './run-tool.js'

/** What a program of poppler prints about a PDF. */
export async function poppler(tool: string, pdf: Uint8Array, ...options: string[]): Promise<string> {
  const at = await mkdtemp(join(tmpdir(), 'pdf-'))
  try {
    const file = join(at, 'it.pdf')
    await writeFile(file, pdf)
    await runTool(tool, ['-v'], 'poppler-utils')
    const last = tool === 'pdftotext' ? ['-'] : []
    return (await promisify(execFile)(tool, [...options, file, ...last], { maxBuffer: 64e6 })).stdout
  } finally {
    await rm(at, { recursive: true, force: true })
  }
}

/** Every number of a page, as printed. A dash that joins the ends of an interval is no sign. */
export const numbers = (text: string): string[] =>
  (
    text
      .replaceAll('–', ' ')
      .replaceAll('−', '-')
      .match(/[-+]?\d+(?:[.,]\d+)*/g) ?? []
  ).sort()

/** Text of the pages that LibreOffice prints of the sheets Summary and Report, without their footers. */
export async function printedByLibreOffice(workbook: Uint8Array): Promise<string> {
  const pages = (await poppler('pdftotext', await toPdf(workbook), '-layout')).split('\f')
  return pages
    .map((page) => page.trimEnd().split('\n'))
    .filter((lines) =>
      /^\s*(Airtightness test: summary|Report)\s+Draughtbook\s+page/.test(lines.at(-1) ?? ''),
    )
    .map((lines) => lines.slice(0, -1).join('\n'))
    .join('\n')
}

/** Text of a PDF of ours, without the lines at the foot of its pages. */
export const ofPdf = async (pdf: Uint8Array) =>
  (await poppler('pdftotext', pdf, '-layout'))
    .split('\f')
    .map((page) => page.trimEnd().replace(/\n[^\n]*page \d+ of \d+$/, ''))
    .join('\n')
