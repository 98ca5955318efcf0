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
export function watchBodies(
  pace: Pace,
  tooSlow: (request: IncomingMessage) => void,
  now = () => performance.now(),
) {
  const bodies = new Set<Body>()
  const every_ms = Math.min(1000, pace.pause_ms / 4)
  let last = now()
  let lost_ms = 0
  /** Time in which something could arrive. While the process stands still, nothing is taken, however quickly it is sent. */
  const clock = (): number => now() - lost_ms
  const check = (): void => {
    lost_ms += Math.max(0, now() - last - 2 * every_ms)
    last = now()
    const time = clock()
    for (const body of bodies) {
      // It has arrived, and waits for whoever reads it.
      if (body.request.complete) continue
      const bytes = body.request.socket.bytesRead - body.before
      if (bytes > body.bytes) Object.assign(body, { bytes, moved: time })
      const taken_ms = time - body.started
      const isSlow = taken_ms > pace.after_ms && bytes < (pace.bytes_per_s * taken_ms) / 1000
      if (time - body.moved <= pace.pause_ms && !isSlow) continue
      bodies.delete(body)
      tooSlow(body.request)
    }
  }
  const timer = setInterval(check, every_ms)
  timer.unref()
  const watch: RequestListener = (request) => {
    if (request.headers['content-length'] === undefined && request.headers['transfer-encoding'] === undefined)
      return
    const time = clock()
    const body = { request, started: time, before: request.socket.bytesRead, bytes: 0, moved: time }
    bodies.add(body)
    // Not left to the next check: a second's requests with their answers would be kept until then.
    request.once('close', () => bodies.delete(body))
  }
  return { watch, check, end: () => clearInterval(timer) }
}
