import express, { type Request, type RequestHandler, type Response } from 'express'
import type { RunningState } from '../running/state.js'
import { HttpFault, overloaded } from './http-fault.js'
import { inTurn } from './in-turn.js'

/** Largest JSON body: a record with 2 × 1000 readings and all its texts stays below a third of it. */
export const JSON_BYTES = 1024 * 1024

/** Takes a JSON body as bytes. Throws 415 for any other type, 413 for more than {@link JSON_BYTES}. */
export function wholeJsonBytes(limit = JSON_BYTES): RequestHandler[] {
  // Compressed bodies are refused: they save nothing at this size, and unpack to any size.
  return [
    requireType('application/json'),
    bounded,
    express.raw({ type: () => true, limit, inflate: false }),
    admit,
  ]
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

/** Most bytes of bodies that are kept while their rest is awaited. */
const RECEIVING_BYTES = 256 * 1024 * 1024
let receiving = 0

/** Turns away new bodies while those that are being received fill the memory meant for them. */
const bounded: RequestHandler = (request, response, next) => {
  if (receiving > RECEIVING_BYTES) throw overloaded()
  let own = 0
  const add = (chunk: Buffer): void => {
    own += chunk.length
    receiving += chunk.length
  }
  let isCounted = true
  const leave = (): void => {
    if (!isCounted) return
    isCounted = false
    request.off('data', add)
    receiving -= own
  }
  request.once('end', leave)
  response.once('close', leave)
  // The reader of the body is attached before the first chunk can come: nothing is missed.
  request.on('data', add)
  next()
}

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
