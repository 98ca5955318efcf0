import { HostError } from '../../host/host.js'
import { type SmallJpeg, smallJpeg } from './small-jpeg.js'

/**
 * The picture as it is kept, see {@link smallJpeg}. A camera's picture takes a second to redraw, in which the page must not stand
 * still: that is done in a worker. Throws HostError, with words for the user, where the browser cannot read it.
 */
export async function shrinkPhoto(file: Blob): Promise<Uint8Array> {
  const made = await (typeof OffscreenCanvas === 'undefined' ? smallJpeg(file) : inWorker(file))
  if (made.fault !== undefined) throw new HostError('failed', made.fault)
  return made.bytes
}

function inWorker(file: Blob): Promise<SmallJpeg> {
  const worker = new Worker(new URL('./photo-worker.ts', import.meta.url), { type: 'module' })
  return new Promise<SmallJpeg>((resolve) => {
    worker.onmessage = ({ data }: MessageEvent<SmallJpeg>) => resolve(data)
    // The worker could not be fetched, or the browser draws nothing there: the page does it.
    worker.onerror = () => resolve(smallJpeg(file))
    worker.postMessage(file)
  }).finally(() => worker.terminate())
}
