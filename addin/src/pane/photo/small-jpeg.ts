/** Longest side of a kept photo, pixels: a leak is seen well, and a test of fifty photos stays below 25 MB. */
const LONGEST_PX = 1600
const QUALITY = 0.82

export type SmallJpeg =
  | { readonly bytes: Uint8Array<ArrayBuffer>; readonly fault?: undefined }
  /** Why there is none, for the user. */
  | { readonly fault: string }

/**
 * A picture as the camera gives it, redrawn as a JPEG of at most 1600 pixels. Only what is seen is kept: the place and time that
 * cameras write into the file are not. Runs in a worker and in the page.
 */
export async function smallJpeg(file: Blob): Promise<SmallJpeg> {
  const picture = await createImageBitmap(file, { imageOrientation: 'from-image' }).catch(() => undefined)
  if (!picture) return { fault: 'This file is not a picture that the browser can read. Use JPEG or PNG.' }
  const scale = Math.min(1, LONGEST_PX / Math.max(picture.width, picture.height))
  const [width, height] = [picture.width, picture.height].map((side) => Math.max(1, Math.round(side * scale)))
  const canvas = emptyCanvas(width as number, height as number)
  const pen = canvas.getContext('2d') as CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D | null
  pen?.drawImage(picture, 0, 0, canvas.width, canvas.height)
  picture.close()
  const jpeg = await jpegOf(canvas).catch(() => null)
  if (!pen || !jpeg) return { fault: 'The browser could not make a JPEG of this picture.' }
  return { bytes: new Uint8Array(await jpeg.arrayBuffer()) }
}

type Canvas = HTMLCanvasElement | OffscreenCanvas

/** A worker has no document. */
function emptyCanvas(width: number, height: number): Canvas {
  if (typeof document === 'undefined') return new OffscreenCanvas(width, height)
  return Object.assign(document.createElement('canvas'), { width, height })
}

const jpegOf = (canvas: Canvas): Promise<Blob | null> =>
  'convertToBlob' in canvas
    ? canvas.convertToBlob({ type: 'image/jpeg', quality: QUALITY })
    : new Promise((resolve) => canvas.toBlob(resolve, 'image/jpeg', QUALITY))
