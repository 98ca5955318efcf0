import { HostError } from '../../host/host.js'

/** Longest side of a kept photo, pixels: a leak is seen well, and a test of fifty photos stays below 25 MB. */
const LONGEST_PX = 1600
const QUALITY = 0.82

/**
 * A picture as the camera gives it, drawn anew as a JPEG of at most 1600 pixels. Only what is seen is kept: the place and time that
 * cameras write into the file are not. Throws HostError, with words for the user, where the browser cannot read it.
 */
export async function shrinkPhoto(file: Blob): Promise<Uint8Array> {
  const picture = await decoded(file)
  const scale = Math.min(1, LONGEST_PX / Math.max(picture.width, picture.height))
  const canvas = document.createElement('canvas')
  canvas.width = Math.max(1, Math.round(picture.width * scale))
  canvas.height = Math.max(1, Math.round(picture.height * scale))
  canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height)
  picture.close()
  const jpeg = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', QUALITY))
  if (!jpeg) throw new HostError('failed', 'The browser could not make a JPEG of this picture.')
  return new Uint8Array(await jpeg.arrayBuffer())
}

async function decoded(file: Blob): Promise<ImageBitmap> {
  try {
    return await createImageBitmap(file, { imageOrientation: 'from-image' })
  } catch (cause) {
    throw new HostError('failed', 'This file is not a picture that the browser can read. Use JPEG or PNG.', {
      cause,
    })
  }
}
