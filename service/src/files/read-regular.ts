import { constants } from 'node:fs'
import { type FileHandle, open } from 'node:fs/promises'

/** Something at a path that is not a file to read: a pipe, a device, a folder, or a file that is too large. */
export class NotReadable extends Error {}

/**
 * The bytes of a regular file, at most so many. A path may lead to a pipe that nobody writes to, or to a device that never ends,
 * and a file may grow while it is read: none of them holds up the caller or fills the memory.
 * @throws NotReadable, or the system's error
 */
export async function readRegular(path: string, most: number): Promise<Uint8Array> {
  // Without waiting: a pipe would wait for its writer.
  const file = await open(path, constants.O_RDONLY | constants.O_NONBLOCK)
  try {
    const found = await file.stat()
    if (!found.isFile())
      throw new NotReadable(found.isDirectory() ? 'it is a folder, not a file' : 'it is not a regular file')
    if (found.size > most) throw tooLarge(most)
    return await upTo(file, found.size, most)
  } finally {
    await file.close()
  }
}

async function upTo(file: FileHandle, size: number, most: number): Promise<Uint8Array> {
  // One byte more shows the end, or that the file has grown.
  let bytes = new Uint8Array(size + 1)
  let length = 0
  for (;;) {
    const { bytesRead } = await file.read(bytes, length, bytes.length - length)
    if (bytesRead === 0) return bytes.subarray(0, length)
    length += bytesRead
    if (length > most) throw tooLarge(most)
    if (length < bytes.length) continue
    const larger = new Uint8Array(Math.min(2 * bytes.length, most + 1))
    larger.set(bytes)
    bytes = larger
  }
}

const tooLarge = (most: number) =>
  new NotReadable(
    most >= 1024 * 1024
      ? `the file is larger than ${most / 1024 / 1024} MB`
      : `the file is larger than ${most / 1024} kB`,
  )
