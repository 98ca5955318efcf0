import type { IncomingMessage } from 'node:http'

/** A body that has arrived in so many pieces with fewer bytes than this in each, on average, is refused. */
const PIECES = 4096
const BYTES = 16

/**
 * Refuses bodies that are sent in pieces of a few bytes. Each piece of a chunked body is handed over by itself, which takes longer than
 * its bytes are worth: a million of one byte cost two seconds.
 */
export function refuseCrumbs(request: IncomingMessage, refuse: () => void): void {
  if (request.headers['transfer-encoding'] === undefined) return
  const push = request.push.bind(request)
  let [pieces, bytes] = [0, 0]
  // Counted on the way in: whoever waits for a body's first piece would else have taken it from its reader.
  request.push = (piece: Uint8Array | null, encoding?: BufferEncoding): boolean => {
    if (piece === null || request.destroyed) return push(piece, encoding)
    pieces++
    bytes += piece.length
    if (pieces < PIECES || bytes >= pieces * BYTES) return push(piece, encoding)
    refuse()
    return false
  }
}
