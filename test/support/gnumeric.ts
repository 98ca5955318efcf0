import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate'
import { runTool } from './run-tool'

/** The workbook after Gnumeric has read it and saved it again, as .xlsx bytes. */
export const savedByGnumeric = (workbook: Uint8Array): Promise<Uint8Array> => converted(workbook, [])

/** The same with every formula worked out anew. */
export const recalculatedByGnumeric = async (workbook: Uint8Array): Promise<Uint8Array> =>
  withOwnTexts(await converted(workbook, ['--recalc']))

/** Gnumeric keeps the text that a formula gives among the shared ones, where exceljs does not look: it is put into the cell. */
function withOwnTexts(workbook: Uint8Array): Uint8Array {
  const parts = unzipSync(workbook)
  const shared = strFromU8(parts['xl/sharedStrings.xml'] ?? new Uint8Array())
  const texts = [...shared.matchAll(/<si>(.*?)<\/si>/gs)].map(([, item = '']) =>
    [...item.matchAll(/<t[^>]*>(.*?)<\/t>/gs)].map(([, text = '']) => text).join(''),
  )
  for (const path of Object.keys(parts).filter((name) => /worksheets\/[^/]+\.xml$/.test(name))) {
    const xml = strFromU8(parts[path] ?? new Uint8Array())
    const own = xml.replace(
      /(<c [^>]*)t="s"([^>]*>\s*<f[^>]*>[^<]*<\/f>\s*<v>)(\d+)</g,
      (_, before: string, between: string, index: string) =>
        `${before}t="str"${between}${texts[Number(index)] ?? ''}<`,
    )
    parts[path] = strToU8(own)
  }
  return zipSync(parts)
}

async function converted(workbook: Uint8Array, options: readonly string[]): Promise<Uint8Array> {
  const folder = await mkdtemp(join(tmpdir(), 'gnumeric-'))
  try {
    const [input, output] = [join(folder, 'workbook.xlsx'), join(folder, 'saved.xlsx')]
    await writeFile(input, workbook)
    await runTool('ssconvert', [...options, input, output], 'gnumeric')
    return new Uint8Array(await readFile(output))
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}
