import type { IncomingMessage } from 'node:http'

/** Most header lines of a request; browsers and proxies send some twenty. */
export const MOST_HEADERS = 100

/** Header lines that say one thing: of several, a proxy in front may have taken another than this service would. */
const ONCE = new Set(['host', 'authorization', 'content-type'])

/**
 * The status to refuse a request with that different programs understand differently, or undefined.
 * Source: RFC 9112, 2.3 (version), 3.2 (Host), 3.2.2 (address with a host of its own), 6.1 (transfer coding); RFC 6585, 5 (too many header lines).
 */
export function doubtful({
  rawHeaders,
  headers,
  httpVersionMajor,
  httpVersionMinor,
  url = '',
}: Pick<IncomingMessage, 'rawHeaders' | 'headers' | 'httpVersionMajor' | 'httpVersionMinor' | 'url'>):
  | number
  | undefined {
  if (httpVersionMajor > 1) return 505
  if (rawHeaders.length > 2 * MOST_HEADERS) return 431
  if (repeatsOne(rawHeaders)) return 400
  // Node undoes chunks; of any other coding the body would be read as it came.
  const { 'transfer-encoding': coding, host } = headers
  if (coding !== undefined && coding.toLowerCase() !== 'chunked')
    return /,\s*chunked$/i.test(coding) ? 501 : 400
  // A program that speaks the older version does not know of chunks, and takes what comes after them for another request.
  if (coding !== undefined && httpVersionMinor === 0) return 400
  if (!url.startsWith('/') && url.includes('//') && hostIn(url) !== host?.toLowerCase()) return 400
  return undefined
}

/** Names and values take turns. */
function repeatsOne(rawHeaders: readonly string[]): boolean {
  const seen = new Set<string>()
  for (let at = 0; at < rawHeaders.length; at += 2) {
    const name = rawHeaders[at]?.toLowerCase() ?? ''
    if (!ONCE.has(name)) continue
    if (seen.has(name)) return true
    seen.add(name)
  }
  return false
}

const hostIn = (url: string): string | undefined => /^https?:\/\/([^/?#]*)/i.exec(url)?.[1]?.toLowerCase()
