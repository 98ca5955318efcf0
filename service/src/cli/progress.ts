import type { ArchiveProgress } from '../archive/run-archive.js'

const WIDTH = 24
const EVERY_MS = 100

/** A bar on one line of standard error, redrawn in place; only where a person watches. */
export function progressBar(
  watched: boolean,
  write: (text: string) => void = (text) => void process.stderr.write(text),
): { show(progress: ArchiveProgress): void; end(): void } {
  let shown = 0
  return {
    show({ done, of }) {
      const now = Date.now()
      if (!watched || (done < of && now - shown < EVERY_MS)) return
      shown = now
      const full = Math.round((WIDTH * done) / of)
      write(`\r${'█'.repeat(full)}${'░'.repeat(WIDTH - full)} ${done} of ${of}`)
    },
    end() {
      if (watched && shown > 0) write('\r\u001b[K')
    },
  }
}
