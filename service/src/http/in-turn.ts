import type { RequestHandler } from 'express'

/** Longest time to work on requests before the event loop does everything else. */
const SLICE_MS = 20

// There is one event loop in a process, so there is one queue.
const waiting: (() => void)[] = []
let running = false

/**
 * Lets requests be worked on one after the other, in slices. A hundred that arrive together would else hold up the
 * event loop for all their time; like this it stays free for health checks and new requests, and those that wait count
 * as in hand, so that more than can be served soon are turned away. Comes after the body is read; what follows until
 * the next `await` is done in the turn.
 */
export const inTurn: RequestHandler = (_request, response, next) => {
  waiting.push(() => {
    // Its client has disconnected.
    if (!response.destroyed) next()
  })
  if (running) return
  running = true
  setImmediate(work)
}

function work(): void {
  const end = performance.now() + SLICE_MS
  do waiting.shift()?.()
  while (waiting.length > 0 && performance.now() < end)
  running = waiting.length > 0
  if (running) setImmediate(work)
}
