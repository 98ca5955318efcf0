import { z } from 'zod'
import { sha256Hex } from '../../../contract/sha256.js'
import type { Parts } from '../zip/parts.js'
import type { Pictures } from './picture.js'

/** Key of the rows of sheet Record that say which pictures the workbook was issued with. */
export const PICTURES = 'pictures'

const Description = z.object({
  firmName: z.string().optional(),
  detailsKept: z.boolean(),
  list: z.array(
    z.object({
      name: z.string(),
      of: z.enum(['logo', 'set-up', 'leak']),
      caption: z.string(),
      type: z.enum(['jpeg', 'png']),
      width_px: z.number().positive(),
      height_px: z.number().positive(),
      sha256: z.string(),
    }),
  ),
})
export type PicturesDescription = z.infer<typeof Description>

/** The pictures without their bytes, each with its digest. */
export const describePictures = ({ firmName, detailsKept, list }: Pictures): PicturesDescription => ({
  ...(firmName !== undefined && { firmName }),
  detailsKept,
  list: list.map(({ bytes, ...about }) => ({ ...about, sha256: sha256Hex(bytes) })),
})

/** The description as it is on sheet Record. Undefined where the workbook has none, or none that can be read. */
export function parsePictures(rows: readonly string[] | undefined): PicturesDescription | undefined {
  if (!rows || rows.length === 0) return undefined
  try {
    return Description.parse(JSON.parse(rows.join('')))
  } catch {
    return undefined
  }
}

/**
 * The pictures of an archived workbook, found among its parts by their digests: a program that saves it gives them other names.
 * A picture that is not among them any more has no bytes, so that the workbook made again differs from the archived one.
 */
export function picturesFromParts({ list, ...about }: PicturesDescription, parts: Parts): Pictures {
  const bytesOf = new Map(
    [...parts].filter(([path]) => /^xl\/media\//.test(path)).map(([, bytes]) => [sha256Hex(bytes), bytes]),
  )
  return {
    ...about,
    list: list.map(({ sha256: digest, ...picture }) => ({
      ...picture,
      bytes: bytesOf.get(digest) ?? new Uint8Array(),
    })),
  }
}
