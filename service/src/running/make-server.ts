import { readFile } from 'node:fs/promises'
import { createServer, type RequestListener, type Server, STATUS_CODES } from 'node:http'
import { createServer as createSecureServer } from 'node:https'
import type { Duplex } from 'node:stream'
import { createSecureContext, TLSSocket } from 'node:tls'
import type { Settings } from '../settings/settings.js'
import { endInTurn } from './closings.js'
import { refuseCrumbs } from './crumbs.js'
import { doubtful } from './doubtful.js'
import { classesFor } from './express-classes.js'
import { goOnWhenRead } from './go-on.js'
import { inSlices } from './in-slices.js'
import { PACE, type Pace, watchBodies } from './pace.js'
import { mustBeTaken } from './taken.js'

interface TlsFiles {
  readonly cert: Buffer
  readonly key: Buffer
}

/**
 * Certificate and key, tried together before anything else is started. Undefined when TLS is off.
 * @throws Error naming the files when they do not work together, or the system's error
 */
export async function readTlsFiles({ tlsCertificate, tlsKey }: Settings): Promise<TlsFiles | undefined> {
  if (tlsCertificate === undefined || tlsKey === undefined) return undefined
  const files = { cert: await readFile(tlsCertificate), key: await readFile(tlsKey) }
  try {
    createSecureContext(files)
  } catch {
    throw new Error(`${tlsCertificate} and ${tlsKey} are not a certificate and its key in PEM form`)
  }
  return files
}

/** Time for all headers to arrive, and for a TLS connection to be agreed on; slow senders are cut off. */
const HEADERS_MS = 10_000

/**
 * How long a reader may take nothing of an answer. What the system has taken to send counts, and that may be megabytes at a time: a
 * slow line needs minutes for them.
 */
const TAKEN_MS = 300_000

/** How long the other side is waited for; shorter in tests. */
export interface Patience {
  readonly pace?: Pace
  readonly headers_ms?: number
  readonly taken_ms?: number
}

/** A server for an app, with or without TLS, that slow or malformed senders cannot hold up. */
export function makeServer(
  app: RequestListener,
  tls?: TlsFiles,
  { pace = PACE, headers_ms = HEADERS_MS, taken_ms = TAKEN_MS }: Patience = {},
): Server {
  const options = {
    ...classesFor(app),
    headersTimeout: headers_ms,
    // Bodies are judged by their pace, not by a time that only fits one line and one size.
    requestTimeout: 0,
    keepAliveTimeout: 10_000,
    connectionsCheckingInterval: 1000,
    maxHeaderSize: 16 * 1024,
  }
  const taken = withoutDoubt(inBounds(inSlices(app)))
  const server = tls
    ? createSecureServer({ ...options, ...tls, minVersion: 'TLSv1.2', handshakeTimeout: headers_ms }, taken)
    : createServer(options, taken)
  const bodies = watchBodies(pace, (request) => answer(request.socket, 408))
  server.prependListener(tls ? 'secureConnection' : 'connection', endInTurn)
  server.prependListener('request', bodies.watch)
  server.prependListener('request', (_request, response) => mustBeTaken(response, taken_ms))
  server.prependListener('request', (request) => refuseCrumbs(request, () => answer(request.socket, 400)))
  server.on('checkContinue', (request, response) => {
    goOnWhenRead(request, response)
    server.emit('request', request, response)
  })
  server.once('close', bodies.end)
  server.maxConnections = 10_000
  // Node would leave out what comes after the 2000th line; all are seen, and too many refused.
  server.maxHeadersCount = 0
  server.on('clientError', answerMalformed)
  return server
}

/** Answers requests that can be understood in two ways, and ends their connection: what follows on it may not be a request. */
function withoutDoubt(app: RequestListener): RequestListener {
  return (request, response) => {
    const status = doubtful(request)
    if (status === undefined) return app(request, response)
    request.resume()
    answer(request.socket, status)
  }
}

/** Most requests that one connection may send ahead of their answers; browsers and proxies send one. */
const SENT_AHEAD = 16

/**
 * Ends connections that send very many requests without waiting for answers: all that arrive in one piece are handed over in one turn
 * of the event loop, and thousands fit into it.
 */
function inBounds(app: RequestListener): RequestListener {
  const unanswered = new WeakMap<Duplex, number>()
  return (request, response) => {
    const { socket } = request
    if (socket.destroyed) return
    const ahead = unanswered.get(socket) ?? 0
    if (ahead > SENT_AHEAD) return void socket.destroy()
    unanswered.set(socket, ahead + 1)
    response.once('close', () => unanswered.set(socket, (unanswered.get(socket) ?? 1) - 1))
    app(request, response)
  }
}

const STATUS_OF: Readonly<Record<string, number>> = {
  ERR_HTTP_REQUEST_TIMEOUT: 408,
  HPE_HEADER_OVERFLOW: 431,
  HPE_CHUNK_EXTENSIONS_OVERFLOW: 413,
}

/** What never became a request is answered on the bare connection, with the same kind of body. */
function answerMalformed(error: NodeJS.ErrnoException, socket: Duplex): void {
  // Before both sides have agreed on a key an answer would wait for it, and with it the connection.
  const isAgreed = !(socket instanceof TLSSocket) || socket.getProtocol() !== null
  if (error.code === 'ECONNRESET' || !isAgreed) return void socket.destroy()
  answer(socket, STATUS_OF[error.code ?? ''] ?? 400)
}

/** How long the other side has to take an answer on the bare connection. */
const TAKE_MS = 2000

function answer(socket: Duplex, status: number): void {
  if (!socket.writable) return void socket.destroy()
  const title = STATUS_CODES[status] ?? ''
  const body = JSON.stringify({ type: 'about:blank', title, status })
  socket.end(
    `HTTP/1.1 ${status} ${title}\r\ncontent-type: application/problem+json\r\ncontent-length: ${body.length}\r\nconnection: close\r\n\r\n${body}`,
    () => socket.destroy(),
  )
  setTimeout(() => socket.destroy(), TAKE_MS).unref()
}
