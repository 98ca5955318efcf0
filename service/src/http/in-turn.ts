import type { RequestHandler } from 'express'
import { doPieces } from './pieces.js'

/** Longest time to work on what waits before the event loop does everything else. */
const SLICE_MS = 20

// There is one event loop in a process, so there is one queue.
const waiting: (() => void)[] = []
let running = false

/** Does work after what waits before it, in slices: many small pieces that come together would else hold the event loop for all their time. */
export function whenTurn(piece: () => void): void {
  waiting.push(piece)
  if (running) return
  running = true
  setImmediate(work)
}

/** Resolves when the turn of whoever asks has come. */
export const myTurn = (): Promise<void> => new Promise(whenTurn)

function work(): void {
  const end = performance.now() + SLICE_MS
  doPieces(
    waiting,
    () => performance.now() > end,
    () => {
      running = waiting.length > 0
      if (running) setImmediate(work)
    },
  )
}

/**
 * Lets requests be worked on one after the other. The event loop stays free for health checks and new requests, and those that wait
 * count as in hand, so that more than can be served soon are turned away. Comes after the body is read; what follows until the next
 * `await` is done in the turn.
 */
export const inTurn: RequestHandler = (_request, response, next) =>
  whenTurn(() => {
    // Its client has disconnected.
    if (!response.destroyed) next()
  })
