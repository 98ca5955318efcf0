import type { RequestListener } from 'node:http'
import { doPieces } from '../http/pieces.js'

/** Longest time to begin requests before the event loop does everything else. */
const SLICE_MS = 15

/**
 * Hands requests over one after the other, in slices of time. The system reports all connections on which something has arrived at once:
 * some thousand requests would else be begun in one turn of the event loop, however quickly each is answered.
 */
export function inSlices(app: RequestListener, now = () => performance.now()): RequestListener {
  const waiting: (() => void)[] = []
  let end: number | undefined
  const isOver = (): boolean => end !== undefined && now() > end

  /** Of a new turn of the event loop. */
  function next(): void {
    end = undefined
    if (waiting.length === 0) return
    begin()
    doPieces(waiting, isOver)
  }

  function begin(): void {
    end = now() + SLICE_MS
    setImmediate(next)
  }

  return (request, response) => {
    const take = (): void => {
      // Its client has disconnected.
      if (!response.destroyed) app(request, response)
    }
    if (waiting.length > 0 || isOver()) return void waiting.push(take)
    if (end === undefined) begin()
    take()
  }
}
