/**
 * Does pieces of work one after the other until none is left or the time is over; at least one. What a piece puts off to the end of
 * its own callback (`process.nextTick`, promises) is done before the next piece, and so counts: done after all of them, it would
 * double the time.
 */
export function doPieces(waiting: (() => void)[], isOver: () => boolean, after?: () => void): void {
  waiting.shift()?.()
  // Node runs ticks before microtasks, so a tick asked for by a microtask comes after both.
  queueMicrotask(() =>
    process.nextTick(() => {
      if (waiting.length > 0 && !isOver()) doPieces(waiting, isOver, after)
      else after?.()
    }),
  )
}
