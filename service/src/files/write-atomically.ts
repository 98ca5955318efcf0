import { randomBytes } from 'node:crypto'
import { open, rename, rm } from 'node:fs/promises'
import { basename, dirname, join } from 'node:path'

/**
 * Writes a file so that nobody ever sees half of it: to a temporary name in the same folder, flushed to disk, then
 * renamed over the old one. On any error the old file is left unchanged and the temporary one is removed.
 */
export async function writeAtomically(
  path: string,
  content: Uint8Array | string,
  mode = 0o644,
): Promise<void> {
  const folder = dirname(path)
  const temporary = join(folder, `.${basename(path)}.${randomBytes(6).toString('hex')}.part`)
  try {
    const file = await open(temporary, 'wx', mode)
    try {
      await file.writeFile(content)
      await file.sync()
    } finally {
      await file.close()
    }
    await rename(temporary, path)
  } catch (error) {
    await rm(temporary, { force: true })
    throw error
  }
  await syncFolder(folder)
}

/** The rename reaches the disk only when its folder is flushed. Not every file system can open a folder. */
async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r').catch(() => undefined)
  await handle?.sync().catch(() => undefined)
  await handle?.close()
}
