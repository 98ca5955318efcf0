import { z } from 'zod'
import { readRegular } from '../../files/read-regular.js'
import { writeAtomically } from '../../files/write-atomically.js'
import { withLock } from '../../library/with-lock.js'

/** A token in use is used all the time. */
const WRITE_MS = 60_000

/** An entry for each of 10,000 tokens has some 500 kB. */
const MOST_BYTES = 4 * 1024 * 1024

const UseFile = z.strictObject({
  format: z.literal('draughtbook/token-use@1'),
  lastUse: z.record(z.string(), z.iso.datetime()),
})
export type LastUse = Readonly<Record<string, string>>

/** Beside the token file and never in it: statistics must not be able to damage the access list. */
const useFile = (tokens: string): string => `${tokens}.use.json`

/** When each token was last used, by id, to the minute; nothing where that is not known. */
export async function readUse(tokens: string): Promise<LastUse> {
  const bytes = await readRegular(useFile(tokens), MOST_BYTES).catch(() => new Uint8Array())
  const text = new TextDecoder().decode(bytes)
  const read = UseFile.safeParse(parsed(text))
  return read.success ? read.data.lastUse : {}
}

/** Notes the use of tokens, and writes it down from time to time. Several services may share the file. */
export class TokenUse {
  private readonly seen = new Map<string, string>()
  private planned = false

  /** @param every_ms - how often the file is written at most */
  constructor(
    private readonly tokens: string,
    private readonly every_ms = WRITE_MS,
  ) {}

  note(id: string): void {
    this.seen.set(id, new Date().toISOString())
    if (!this.planned) this.plan()
  }

  private plan(): void {
    this.planned = true
    void this.write()
      // A folder that cannot be written is not a reason to keep anybody out.
      .catch(() => undefined)
      .then(() => {
        setTimeout(() => {
          this.planned = false
          // What was used meanwhile may not be used again for days.
          if (this.seen.size > 0) this.plan()
        }, this.every_ms).unref()
      })
  }

  private async write(): Promise<void> {
    await changeUse(this.tokens, (lastUse) => {
      const now = new Date().toISOString()
      for (const [id, at] of this.seen) {
        const known = lastUse[id] ?? ''
        // A use that is still to come was noted while the clock was wrong.
        if (at > known || known > now) lastUse[id] = at
      }
      this.seen.clear()
    })
  }
}

/** Removes the last use of a token, if one is recorded. */
export async function forgetUse(tokens: string, id: string): Promise<void> {
  if (!((await readUse(tokens))[id] ?? false)) return
  await changeUse(tokens, (lastUse) => {
    delete lastUse[id]
  })
}

async function changeUse(tokens: string, change: (lastUse: Record<string, string>) => void): Promise<void> {
  const path = useFile(tokens)
  await withLock(`${path}.lock`, async () => {
    const lastUse: Record<string, string> = { ...(await readUse(tokens)) }
    change(lastUse)
    const text = JSON.stringify({ format: 'draughtbook/token-use@1', lastUse }, null, 2)
    await writeAtomically(path, `${text}\n`, 0o600)
  })
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}
