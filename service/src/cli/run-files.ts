import type { ReadRecord } from '@draughtbook/shared-calc/register'
import type { ArchiveResult, ArchiveTask } from '../archive/archive-tasks.js'
import { type FoundFiles, findFiles } from '../archive/find-files.js'
import { ordersFor, type SignatureWish } from '../archive/orders.js'
import { type ArchiveProgress, runArchive } from '../archive/run-archive.js'
import { type ArchiveOptions, runnerFor } from './archive-options.js'
import { UsageError, withFile } from './errors.js'
import type { Terminal } from './terminal.js'

/** Finds the files of an archive and does one job on each, with a bar while it lasts. Results are in the order of the files. */
export async function runFiles<Task extends ArchiveTask>(
  task: Task,
  paths: readonly string[],
  options: ArchiveOptions,
  terminal: Terminal,
  signatures: SignatureWish = {},
): Promise<{ files: readonly string[]; results: ArchiveResult<Task>[]; others: FoundFiles['others'] }> {
  const { files, others } = await findFiles(paths)
  if (files.length === 0 && others.every(({ expected }) => !expected))
    throw new UsageError(
      others.map(({ file, why }) => `${file}: ${why}`).join('\n') ||
        `no workbook was found in ${paths.join(', ')}`,
    )
  const { orders, broken } = await withFile(options.layout.join(', '), () =>
    ordersFor(files, { layouts: options.layout, ...signatures }),
  )
  const runner = await runnerFor(options, orders.length, terminal.err)
  const bar = progressBar(terminal.watched)
  try {
    const results = await runArchive(runner, task, orders, { onProgress: bar.show })
    // A layout is not a file to read, which needs no mention, unless it is broken.
    const sound = others.filter(({ file }) => broken.every((one) => one.file !== file))
    return { files: orders.map(({ file }) => file), results, others: [...sound, ...broken] }
  } finally {
    bar.end()
    await runner.close()
  }
}

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

/**
 * Records of all tests of files and folders. What cannot be read is named on standard error.
 * @throws UsageError where nothing could be read
 */
export async function recordsOf(
  paths: readonly string[],
  options: ArchiveOptions,
  terminal: Terminal,
): Promise<{ readonly records: readonly Omit<ReadRecord, 'part'>[]; readonly unread: number }> {
  const { namedByPart } = await import('@draughtbook/shared-calc/register')
  const { results, others } = await runFiles('records', paths, options, terminal)
  const leftOut = [...others, ...results.flatMap((result) => result.leftOut)]
  const unread = leftOut.filter(({ expected }) => !expected)
  const records = results.flatMap((result) => result.records.map(namedByPart))
  const inWords = ({ file, why }: (typeof leftOut)[number]) => `${file}: ${why}`
  if (records.length === 0) throw new UsageError(noTest(leftOut.map(inWords)))
  const lines = unread.map(inWords)
  for (const line of lines) terminal.err(line)
  return { records, unread: unread.length }
}

/** Reasons beyond these are counted. */
const MOST_REASONS = 20

/** Without a single test whatever was passed over is named too: one of the files was meant. */
function noTest(reasons: readonly string[]): string {
  const more = reasons.length - MOST_REASONS
  return [
    'no test was found',
    ...reasons.slice(0, MOST_REASONS),
    ...(more > 0 ? [`and ${more} more`] : []),
  ].join('\n')
}
