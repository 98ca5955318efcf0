import { createServer, type RequestListener, type Server, STATUS_CODES } from 'node:http'
import { createServer as createSecureServer } from 'node:https'
import type { TlsFiles } from './tls-files.js'

/** Time for all headers to arrive, and for a whole request; slow senders are cut off. */
const HEADERS_MS = 10_000
const REQUEST_MS = 60_000

/** A server for an app, with or without TLS, that slow or malformed senders cannot hold up. */
export function makeServer(app: RequestListener, tls?: TlsFiles): Server {
  const options = {
    headersTimeout: HEADERS_MS,
    requestTimeout: REQUEST_MS,
    keepAliveTimeout: 10_000,
    connectionsCheckingInterval: 1000,
    maxHeaderSize: 16 * 1024,
  }
  const server = tls
    ? createSecureServer({ ...options, ...tls, minVersion: 'TLSv1.2' }, app)
    : createServer(options, app)
  server.maxConnections = 10_000
  server.on('clientError', answerMalformed)
  return server
}

const STATUS_OF: Readonly<Record<string, number>> = {
  ERR_HTTP_REQUEST_TIMEOUT: 408,
  HPE_HEADER_OVERFLOW: 431,
  HPE_CHUNK_EXTENSIONS_OVERFLOW: 413,
}

/** What never became a request is answered on the bare connection, with the same kind of body. */
function answerMalformed(error: NodeJS.ErrnoException, socket: import('node:stream').Duplex): void {
  if (error.code === 'ECONNRESET' || !socket.writable) return void socket.destroy()
  const status = STATUS_OF[error.code ?? ''] ?? 400
  const title = STATUS_CODES[status] ?? ''
  const body = JSON.stringify({ type: 'about:blank', title, status })
  socket.end(
    `HTTP/1.1 ${status} ${title}\r\ncontent-type: application/problem+json\r\ncontent-length: ${body.length}\r\nconnection: close\r\n\r\n${body}`,
  )
}
