import { extname } from 'node:path'
import { fileFault } from '../files/file-fault.js'
import { writeAtomically } from '../files/write-atomically.js'
import { UsageError } from './usage-error.js'

/** Writes a workbook where the user asked for it. Throws UsageError when it is no .xlsx or cannot be written. */
export async function writeWorkbook(path: string, make: () => Promise<Uint8Array>): Promise<void> {
  if (extname(path).toLowerCase() !== '.xlsx')
    throw new UsageError(`--out must name an .xlsx file, not ${path}`)
  const bytes = await make()
  try {
    await writeAtomically(path, bytes)
  } catch (error) {
    throw new UsageError(`${path} cannot be written: ${fileFault(error) ?? String(error)}`)
  }
}
