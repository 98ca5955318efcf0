import { type SmallJpeg, smallJpeg } from './small-jpeg.js'

/** The parts of the worker's own scope that are used; the DOM library names the window's instead. */
const scope = self as unknown as {
  onmessage: ((event: MessageEvent<Blob>) => void) | null
  postMessage(message: SmallJpeg): void
}

scope.onmessage = ({ data }) => void smallJpeg(data).then((made) => scope.postMessage(made))
