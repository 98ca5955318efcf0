import type { Response } from 'express'

/** Does something once an answer is over, at once where it is: its client may have gone while something else was waited for. */
export function onceOver(response: Response, work: () => void): void {
  if (response.destroyed) work()
  else response.once('close', work)
}

/** Falls when the client disconnects before its answer is complete. */
export function goneSignal(response: Response): AbortSignal {
  const gone = new AbortController()
  onceOver(response, () => {
    if (!response.writableFinished) gone.abort()
  })
  return gone.signal
}
