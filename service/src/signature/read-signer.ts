import { readFile } from 'node:fs/promises'
import { UsageError } from '../cli/usage-error.js'
import { fileFault } from '../files/file-fault.js'
import { signerOf } from './sign.js'

export type Signer = ReturnType<typeof signerOf>

/** The signer of a private key's file. Throws UsageError when it holds none. */
export async function readSigner(path: string): Promise<Signer> {
  try {
    return signerOf(await readFile(path, 'utf8'))
  } catch (error) {
    const why = error instanceof RangeError ? error.message : fileFault(error)
    if (why === undefined) throw error
    throw new UsageError(`${path}: ${why}`)
  }
}
