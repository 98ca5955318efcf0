import type { Response } from 'express'

/** A signal that falls when the client goes before its answer is complete. */
export function wanted(response: Response): AbortSignal {
  const controller = new AbortController()
  response.once('close', () => {
    if (!response.writableFinished) controller.abort(new Error('the client has gone'))
  })
  return controller.signal
}
