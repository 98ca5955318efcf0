import { randomBytes } from 'node:crypto'
import { createWriteStream, type WriteStream } from 'node:fs'
import { join } from 'node:path'
import { finished, pipeline } from 'node:stream'
import type { StorageEngine } from 'multer'

/** Where the files of one request are written. */
export interface UploadStorage extends StorageEngine {
  /** Resolves once no file is open: before that, more of them could still appear in the folder. */
  readonly closed: () => Promise<void>
}

/** Writes files into a folder that is removed as a whole: hundreds of senders may leave at once, and each file by itself would be work. */
export function storageIn(folder: string): UploadStorage {
  const open = new Set<WriteStream>()
  return {
    _handleFile: (_request, file, done) => {
      // Never the sender's name: it could lead anywhere.
      const path = join(folder, randomBytes(16).toString('hex'))
      const written = createWriteStream(path)
      open.add(written)
      written.once('close', () => open.delete(written))
      pipeline(file.stream, written, (error) =>
        error ? done(error) : done(null, { path, size: written.bytesWritten }),
      )
    },
    _removeFile: (_request, _file, done) => done(null),
    closed: async () => {
      await Promise.all(
        [...open].map((written) => new Promise<void>((resolve) => finished(written, () => resolve()))),
      )
    },
  }
}
