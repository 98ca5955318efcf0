import { JsonError, readJson } from './read-json.js'

/** The JSON of a body's bytes. Throws JsonError naming the place of the first fault. */
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
