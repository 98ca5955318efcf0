import type { Response } from 'express'
import { goneSignal } from './gone.js'
import { clientGone, HttpFault } from './http-fault.js'

/**
 * Does work for one answer. The work's signal is aborted when the client disconnects before its answer is complete, or
 * when the time for one request is over: then the answer is 503.
 */
export async function within<T>(
  response: Response,
  timeout_s: number,
  work: (signal: AbortSignal) => Promise<T>,
): Promise<T> {
  const gone = goneSignal(response)
  const tooLong = AbortSignal.timeout(timeout_s * 1000)
  try {
    return await work(AbortSignal.any([gone, tooLong]))
  } catch (error) {
    if (tooLong.aborted) throw tookTooLong(timeout_s)
    if (gone.aborted) throw clientGone()
    throw error
  }
}

export const tookTooLong = (timeout_s: number) =>
  new HttpFault(503, 'The request took too long', {
    kind: 'busy',
    detail: `the limit for one request is ${timeout_s} s`,
    headers: { 'retry-after': '5' },
  })
