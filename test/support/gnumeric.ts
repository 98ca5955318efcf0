import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { runTool } from './run-tool'

/** The workbook after Gnumeric has read it and saved it again, as .xlsx bytes. */
export async function savedByGnumeric(workbook: Uint8Array): Promise<Uint8Array> {
  const folder = await mkdtemp(join(tmpdir(), 'gnumeric-'))
  try {
    const [input, output] = [join(folder, 'workbook.xlsx'), join(folder, 'saved.xlsx')]
    await writeFile(input, workbook)
    await runTool('ssconvert', [input, output], 'gnumeric')
    return new Uint8Array(await readFile(output))
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}
