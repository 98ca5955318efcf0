import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { requireBuild } from './support/built'
import { folder } from './support/command-line'

const WATCHDOG = new URL('../../service/dist/running/watchdog.js', import.meta.url).href

/** Runs a script under a watchdog of one second; resolves to how it ended and what it wrote. */
async function watched(script: string) {
  await requireBuild()
  const file = join(await folder(), 'watched.mjs')
  await writeFile(
    file,
    `import { startWatchdog } from '${WATCHDOG}'\nconst watchdog = startWatchdog(1)\n${script}`,
  )
  const child = spawn(process.execPath, [file])
  let text = ''
  child.stderr.on('data', (chunk) => {
    text += chunk
  })
  const [status, signal] = (await once(child, 'close')) as [number | null, string | null]
  return { status, signal, text }
}

describe('the watchdog', () => {
  it('ends a process whose event loop stands still, with a sentence', async () => {
    const { signal, text } = await watched('for (;;);')
    expect(signal).toBe('SIGKILL')
    expect(text).toBe('draughtbook: ended at once: the service did not respond for 1 s\n')
  })

  it('ends a process that does not stop in the time it has', async () => {
    const { signal, text } = await watched('watchdog.endWithin(2); setInterval(() => undefined, 1000)')
    expect(signal).toBe('SIGKILL')
    expect(text).toBe('draughtbook: ended at once: it did not stop in time\n')
  })

  it('lets a process end that does stop', async () => {
    expect(await watched('watchdog.endWithin(60); watchdog.end()')).toEqual({
      status: 0,
      signal: null,
      text: '',
    })
  })
})
