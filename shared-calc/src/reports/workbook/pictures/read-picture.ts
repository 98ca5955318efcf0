import { PICTURE_LIMITS, type Picture } from './picture.js'
import { uprightJpeg } from './upright-jpeg.js'
import { withoutDetails } from './without-details.js'

/**
 * A JPEG or PNG ready for the workbook: upright, not larger than the limits, and without details unless they are kept. A photo
 * with its details is left as it is, to the byte.
 * @throws Error that says, as part of a sentence, why it cannot be used
 */
export async function readPicture(
  bytes: Uint8Array,
  keepDetails: boolean,
): Promise<Pick<Picture, 'type' | 'width_px' | 'height_px' | 'bytes'>> {
  const { width, height, type, orientation } = await measure(bytes)
  if (keepDetails) return bounded({ type, width_px: width, height_px: height, bytes })
  const bare = withoutDetails(bytes, type)
  const fits = orientation === 1 && Math.max(width, height) <= PICTURE_LIMITS.longSide_px
  if (type === 'png' || (fits && bare.length <= PICTURE_LIMITS.pictureBytes))
    return bounded({ type, width_px: width, height_px: height, bytes: bare })
  if (width * height > PICTURE_LIMITS.megapixels * 1e6)
    throw new RangeError(`it has more than ${PICTURE_LIMITS.megapixels} million pixels`)
  return bounded({ type, ...(await uprightJpeg(bare, orientation)) })
}

async function measure(
  bytes: Uint8Array,
): Promise<{ width: number; height: number; type: 'jpeg' | 'png'; orientation: number }> {
  if (bytes.length > PICTURE_LIMITS.fileBytes)
    throw new RangeError(`it is larger than ${megabytes(PICTURE_LIMITS.fileBytes)} MB`)
  const type = typeOf(bytes)
  if (!type) throw new RangeError('it is neither a JPEG nor a PNG picture')
  const { imageSize } = await import('image-size')
  let found: ReturnType<typeof imageSize>
  try {
    found = imageSize(bytes)
  } catch (error) {
    throw new RangeError('its size cannot be read: the picture is damaged', { cause: error })
  }
  const { width, height, orientation = 1 } = found
  if (!(width >= 1 && height >= 1)) throw new RangeError('it has no pixels')
  return { width, height, type, orientation }
}

function bounded<T extends { readonly bytes: Uint8Array }>(picture: T): T {
  if (picture.bytes.length > PICTURE_LIMITS.pictureBytes)
    throw new RangeError(
      `it takes more than ${megabytes(PICTURE_LIMITS.pictureBytes)} MB in the workbook; scale it down to ${PICTURE_LIMITS.longSide_px} pixels`,
    )
  return picture
}

function typeOf(bytes: Uint8Array): 'jpeg' | 'png' | undefined {
  const begins = (...signature: number[]) => signature.every((byte, i) => bytes[i] === byte)
  if (begins(0xff, 0xd8, 0xff)) return 'jpeg'
  return begins(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a) ? 'png' : undefined
}

const megabytes = (bytes: number): number => Math.round(bytes / 1024 / 1024)
