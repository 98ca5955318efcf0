import type { Request, RequestHandler, Response } from 'express'
import type { RunningState } from '../running/state.js'
import { HttpFault, overloaded } from './http-fault.js'
import { inTurn } from './in-turn.js'

/** Largest JSON body: a record with 2 × 1000 readings and all its texts stays below a third of it. */
const MB = 1024 * 1024
export const JSON_BYTES = MB

/** Takes a JSON body as bytes. Throws 415 for any other type, 413 for more than {@link JSON_BYTES}. */
export function wholeJsonBytes(limit = JSON_BYTES): RequestHandler[] {
  return [requireType('application/json'), readWhole(limit), admit]
}

/** The request's place among those in hand, now that it is whole. Set up by the app. */
export const admit: RequestHandler = (request, response, next) => {
  const { state } = request.app.locals as { state: RunningState }
  state.admit(request, response, next)
}

/** The same for routes that take their body in a way of their own. */
export const admitted = (request: Request, response: Response): Promise<void> =>
  new Promise((resolve, reject) => {
    admit(request, response, (error?: unknown) => (error ? reject(error as Error) : resolve()))
  })

/** Bodies whose rest is awaited: how many bytes of them are kept, and at most. */
export interface Receiving {
  readonly most: number
  bytes: number
}

/** Of all senders together. */
const RECEIVING: Receiving = { most: 256 * 1024 * 1024, bytes: 0 }

/**
 * Reads a body whole, and turns senders away while the bodies that are being received fill the memory meant for them: those that begin,
 * and those that would send more. Reading one with express takes as long as a tenth of an evaluation: each small request goes through here.
 */
export function readWhole(limit: number, receiving = RECEIVING): RequestHandler {
  return (request, response, next) => {
    if (receiving.bytes > receiving.most) throw overloaded()
    const { 'content-length': length } = request.headers
    refuseCompressed(request)
    if (Number(length) > limit) throw tooLarge(limit)
    let chunks: Buffer[] = []
    let own = 0
    const leave = (): void => {
      receiving.bytes -= own
      own = 0
    }
    const take = (chunk: Buffer): void => {
      own += chunk.length
      receiving.bytes += chunk.length
      chunks.push(chunk)
      if (own > limit) stop(tooLarge(limit))
      else if (receiving.bytes > receiving.most) stop(overloaded())
    }
    const whole = (): void => {
      leave()
      request.body = chunks.length === 1 ? chunks[0] : Buffer.concat(chunks)
      next()
    }
    function stop(why: HttpFault): void {
      chunks = []
      leave()
      request.off('data', take).off('end', whole)
      // What still comes is read and dropped, or the connection could not be used again.
      request.resume()
      next(why)
    }
    request.on('data', take).once('end', whole)
    response.once('close', leave)
  }
}

/** Throws 415 for a compressed body: it saves little, and unpacks to any size. */
export function refuseCompressed({ headers }: Request): void {
  const { 'content-encoding': encoding } = headers
  if (encoding !== undefined && encoding.toLowerCase() !== 'identity')
    throw new HttpFault(415, 'The body has an unsupported encoding; send it uncompressed')
}

const tooLarge = (limit: number) =>
  new HttpFault(413, 'The body is too large', {
    kind: 'too-large',
    detail: `at most ${limit < MB ? `${limit / 1024} kB` : `${limit / MB} MB`}`,
  })

/** The same, for routes that work on the body between two requests: one request after the other. */
export const jsonBytes = (limit = JSON_BYTES): RequestHandler[] => [...wholeJsonBytes(limit), inTurn]

function requireType(wanted: string): RequestHandler {
  return (request, _response, next) => {
    if (request.is(wanted)) return next()
    throw new HttpFault(415, `The body must be ${wanted}`, { kind: 'wrong-type' })
  }
}

/** The body's bytes, as {@link jsonBytes} took them. */
export function bytesOf(request: Request): Uint8Array {
  const body: unknown = request.body
  return body instanceof Uint8Array ? body : new Uint8Array()
}
