import type { IncomingMessage, ServerResponse } from 'node:http'

/**
 * Tells a sender who waits for it to go on with its body, once somebody reads that: who is refused before need not send it.
 * Source: RFC 9110, 10.1.1.
 */
export function goOnWhenRead(request: IncomingMessage, response: ServerResponse): void {
  const { shouldKeepAlive } = response
  // What a refused sender sends next could be its body or another request.
  response.shouldKeepAlive = false
  const read = request._read.bind(request)
  request._read = (size) => {
    request._read = read
    if (!response.headersSent && response.socket?.writable) {
      response.shouldKeepAlive = shouldKeepAlive
      response.writeContinue()
    }
    read(size)
  }
}
