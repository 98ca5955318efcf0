import { fileText } from '../../../catalogue/findings/log/file.js'
import { remarkFinding } from '../../../catalogue/findings/remark.js'
import type { Finding } from '../../../contract/record/index.js'
import { decoderFor } from '../../container/zip.js'
import { refuse } from '../../problem.js'

/**
 * Text of a separated-values file: UTF-8 or UTF-16 where its bytes prove it, else Windows-1252, and then a finding says so.
 * @throws LogError `unreadable-text` for bytes that are not text
 */
export function decodeText(bytes: Uint8Array): { text: string; findings: Finding[] } {
  const encoding = encodingOf(bytes)
  const text = decoderFor(encoding).decode(bytes)
  return { text, findings: encoding === 'windows-1252' ? [remarkFinding(fileText('log-encoding'))] : [] }
}

export type TextEncoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252'

/** @throws LogError `unreadable-text` for bytes that are not text */
export function encodingOf(bytes: Uint8Array): TextEncoding {
  const proven = provenEncoding(bytes)
  if (proven) return proven
  if (holdsControls(bytes))
    refuse('unreadable-text', 'this is not a text file (it holds control bytes), so it is not a .csv file')
  try {
    decoderFor('utf-8', { fatal: true }).decode(bytes)
    return 'utf-8'
  } catch {
    return 'windows-1252'
  }
}

function provenEncoding(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | undefined {
  const [first, second] = bytes
  if (first === 0xff && second === 0xfe) return 'utf-16le'
  if (first === 0xfe && second === 0xff) return 'utf-16be'
  // Without a mark: text of Latin letters in UTF-16 has a zero in every other byte.
  const head = bytes.subarray(0, 400)
  const zeros = (parity: number) => head.filter((byte, index) => byte === 0 && index % 2 === parity).length
  if (head.length >= 8 && zeros(1) > head.length * 0.4 && zeros(0) === 0) return 'utf-16le'
  if (head.length >= 8 && zeros(0) > head.length * 0.4 && zeros(1) === 0) return 'utf-16be'
  return undefined
}

function holdsControls(bytes: Uint8Array): boolean {
  return bytes.some((byte) => byte < 9 || (byte > 13 && byte < 32 && byte !== 27))
}
