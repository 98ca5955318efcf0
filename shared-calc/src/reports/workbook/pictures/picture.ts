/** What a picture is of: the firm's logo, the set-up of the test, or a leak. */
export type PictureOf = 'logo' | 'set-up' | 'leak'

/** A picture as it goes into the workbook. */
export interface Picture {
  /** Name of the file it came from. */
  readonly name: string
  readonly of: PictureOf
  /** What is under it, and what a screen reader says. */
  readonly caption: string
  readonly type: 'jpeg' | 'png'
  readonly width_px: number
  readonly height_px: number
  readonly bytes: Uint8Array
}

/** The pictures of a workbook, in the order in which they are shown, and the firm's name for its head. */
export interface Pictures {
  readonly firmName?: string | undefined
  readonly list: readonly Picture[]
  /** Whether place, time and camera were left in the photos. */
  readonly detailsKept: boolean
}

/** Own choice, no source: a workbook with all of them can still be sent by mail and is still read by the archive. */
export const PICTURE_LIMITS = {
  photos: 24,
  /** A larger photo is scaled down to this on its longer side. */
  longSide_px: 1600,
  /** What a file may hold as it arrives. */
  fileBytes: 24 * 1024 * 1024,
  /** What one picture and all pictures may take in the workbook. */
  pictureBytes: 2 * 1024 * 1024,
  allBytes: 12 * 1024 * 1024,
  /** A larger photo is not unpacked. */
  megapixels: 60,
  logoBytes: 512 * 1024,
} as const
