import { readdir } from 'node:fs/promises'
import { join } from 'node:path'
import {
  type ChosenPictures,
  choosePictures,
  type PhotoBytes,
  PICTURE_LIMITS,
} from '@draughtbook/shared-calc/workbook'
import { errorCode, fileFault } from '../files/file-fault.js'
import { faultOfPath } from '../files/near-file.js'
import { NotReadable, readRegular } from '../files/read-regular.js'
import type { ReadTest } from '../input/read-sheet.js'
import { firmsHead } from '../library/firms-head.js'
import { UsageError } from './errors.js'

export interface PictureWish {
  /** Folder that the photos are in. */
  readonly photos?: string
  readonly keepPhotoDetails?: boolean
}

/** A test with the pictures of its workbook. */
export interface PicturedTest extends ReadTest {
  readonly pictures?: ChosenPictures
}

/**
 * The tests of a file with their photos and the firm's logo. A photo that no leak names is of the set-up, of every test of the file.
 * Throws UsageError when the folder cannot be read.
 */
export async function withPictures(tests: readonly ReadTest[], wish: PictureWish): Promise<PicturedTest[]> {
  const firm = await firmsHead()
  if (wish.photos === undefined && !firm) return [...tests]
  const photos = wish.photos === undefined ? undefined : await photosOf(wish.photos)
  const named = tests.map(({ record }) =>
    record.leaks?.list.flatMap(({ photo }) => photo?.toLowerCase() ?? []),
  )
  const pictured: PicturedTest[] = []
  for (const [i, test] of tests.entries()) {
    const ofOthers = new Set(named.flatMap((names, k) => (k === i ? [] : (names ?? []))))
    const pictures = await choosePictures(photos ? test.record : withoutPhotos(test.record), {
      ...(photos && { photos }),
      ...(firm && { firm }),
      ofOthers,
      keepDetails: wish.keepPhotoDetails === true,
    })
    pictured.push({ ...test, pictures })
  }
  return pictured
}

/** Without a folder nobody asked for photos: those that leaks name are not missing. */
const withoutPhotos = (record: ReadTest['record']): ReadTest['record'] => {
  const { leaks: _, ...rest } = record
  return rest
}

async function photosOf(folder: string): Promise<Map<string, PhotoBytes>> {
  try {
    const names = (await readdir(folder)).filter((name) => /\.(jpe?g|png)$/i.test(name)).sort()
    if (names.length === 0)
      throw new UsageError(`--photos: the folder ${folder} holds no photo (.jpg, .jpeg, .png)`)
    return new Map(names.map((name) => [name, () => readPhoto(join(folder, name))]))
  } catch (error) {
    if (error instanceof UsageError) throw error
    if (errorCode(error) === 'ENOTDIR')
      throw new UsageError(`--photos: ${folder} is a file: give the folder that the photos are in`)
    throw new UsageError(`--photos: ${folder}: ${(await faultOfPath(folder, error)) ?? String(error)}`)
  }
}

async function readPhoto(path: string): Promise<Uint8Array> {
  try {
    return await readRegular(path, PICTURE_LIMITS.fileBytes)
  } catch (error) {
    const why = error instanceof NotReadable ? error.message : fileFault(error)
    if (why === undefined) throw error
    throw new Error(why, { cause: error })
  }
}
