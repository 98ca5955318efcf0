import express, { type Request, type RequestHandler } from 'express'
import { JsonError, readJson } from '../json/read-json.js'
import { HttpFault } from './http-fault.js'
import { inTurn } from './in-turn.js'

/** Largest JSON body: a record with 2 × 1000 readings and all its texts stays below a third of it. */
export const JSON_BYTES = 1024 * 1024

/** Takes a JSON body as bytes. Throws 415 for any other type, 413 for more than {@link JSON_BYTES}. */
export function wholeJsonBytes(limit = JSON_BYTES): RequestHandler[] {
  // Compressed bodies are refused: they save nothing at this size, and unpack to any size.
  return [requireType('application/json'), express.raw({ type: () => true, limit, inflate: false })]
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

/** The body's JSON. Throws JsonError naming the place of the first fault. */
export function jsonOf(bytes: Uint8Array): unknown {
  if (bytes.length === 0) throw new JsonError([{ path: '', message: 'the body is empty' }])
  return readJson(utf8(bytes))
}

const decoder = new TextDecoder('utf-8', { fatal: true })

function utf8(bytes: Uint8Array): string {
  try {
    return decoder.decode(bytes)
  } catch {
    throw new JsonError([{ path: '', message: 'the body is not text in UTF-8' }])
  }
}
