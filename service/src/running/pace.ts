import type { IncomingMessage, RequestListener } from 'node:http'

/** The pace required of a sender. An honest sender on a slow line may take as long as it needs. */
export interface Pace {
  /** Longest pause, ms. */
  readonly pause_ms: number
  /** From this time on, ms, the mean rate counts. */
  readonly after_ms: number
  readonly bytes_per_s: number
}

export const PACE: Pace = { pause_ms: 15_000, after_ms: 30_000, bytes_per_s: 1024 }

interface Body {
  readonly request: IncomingMessage
  readonly started: number
  readonly before: number
  bytes: number
  moved: number
}

/**
 * Watches the bodies that are being received, and says which are sent too slowly. Bytes are counted on the connection: nothing is
 * taken from the request before whoever reads it does so.
 */
export function watchBodies(pace: Pace, tooSlow: (request: IncomingMessage) => void) {
  const bodies = new Set<Body>()
  const check = (): void => {
    const now = performance.now()
    for (const body of bodies) {
      // It has arrived, and waits for whoever reads it.
      if (body.request.complete) continue
      const bytes = body.request.socket.bytesRead - body.before
      if (bytes > body.bytes) Object.assign(body, { bytes, moved: now })
      const taken_ms = now - body.started
      const isSlow = taken_ms > pace.after_ms && bytes < (pace.bytes_per_s * taken_ms) / 1000
      if (now - body.moved <= pace.pause_ms && !isSlow) continue
      bodies.delete(body)
      tooSlow(body.request)
    }
  }
  const timer = setInterval(check, Math.min(1000, pace.pause_ms / 4))
  timer.unref()
  const watch: RequestListener = (request) => {
    if (request.headers['content-length'] === undefined && request.headers['transfer-encoding'] === undefined)
      return
    const now = performance.now()
    const body = { request, started: now, before: request.socket.bytesRead, bytes: 0, moved: now }
    bodies.add(body)
    // Not left to the next check: a second's requests with their answers would be kept until then.
    request.once('close', () => bodies.delete(body))
  }
  return { watch, end: () => clearInterval(timer) }
}
