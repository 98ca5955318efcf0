import type { Response } from 'express'
import { HttpFault } from './http-fault.js'

/**
 * Does work for one answer. The work's signal is aborted when the client disconnects before its answer is complete, or
 * when the time for one request is over: then the answer is 503.
 */
export async function within<T>(
  response: Response,
  timeout_s: number,
  work: (signal: AbortSignal) => Promise<T>,
): Promise<T> {
  const gone = new AbortController()
  response.once('close', () => {
    if (!response.writableFinished) gone.abort()
  })
  const tooLong = AbortSignal.timeout(timeout_s * 1000)
  try {
    return await work(AbortSignal.any([gone.signal, tooLong]))
  } catch (error) {
    if (tooLong.aborted) throw tookTooLong(timeout_s)
    // There is no client left to answer; 499 is for the audit line.
    if (gone.signal.aborted) throw new HttpFault(499, 'The client has disconnected')
    throw error
  }
}

export const tookTooLong = (timeout_s: number) =>
  new HttpFault(503, 'The request took too long', {
    kind: 'busy',
    detail: `the limit for one request is ${timeout_s} s`,
    headers: { 'retry-after': '5' },
  })
