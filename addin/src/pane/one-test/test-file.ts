import { HostError } from '../../host/host.js'
import { parseEntries, type TestEntries } from './entries.js'

const FORMAT = 'draughtbook/test@1'

/** One test as a file to hand to the office: everything typed and picked, nothing computed. */
export const testFile = (entries: TestEntries): Uint8Array =>
  new TextEncoder().encode(`${JSON.stringify({ format: FORMAT, entries }, null, 1)}\n`)

/** Reads a file of {@link testFile}. Throws HostError, with words for the user, where it is none. */
export function readTestFile(text: string, fileName: string): TestEntries {
  let file: unknown
  try {
    file = JSON.parse(text)
  } catch (cause) {
    throw new HostError('failed', `${fileName} is not a test saved here: it is not JSON.`, { cause })
  }
  const { format, entries } = (file ?? {}) as { format?: unknown; entries?: unknown }
  if (format !== FORMAT)
    throw new HostError('failed', `${fileName} is not a test saved here: its format is not ${FORMAT}.`)
  const read = parseEntries(JSON.stringify(entries))
  if (!read) throw new HostError('failed', `${fileName} is damaged: its entries cannot be read.`)
  return read
}
