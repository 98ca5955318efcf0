import { stat } from 'node:fs/promises'
import { availableParallelism } from 'node:os'
import { QUEUE_WAIT, upTo } from './archive-options.js'
import type { AddCommand } from './command.js'
import { withFile } from './errors.js'

interface Options {
  readonly queue: string
  readonly workers: number
  readonly root: string
  readonly silence: number
  readonly wait: number
}

export const addWorker: AddCommand = (command, { terminal }) => {
  command
    .requiredOption('--queue <redis://…>', 'the Redis server that shares out the files')
    .option('--workers <NUMBER>', 'number of threads', upTo(99), availableParallelism())
    .option('--root <FOLDER>', 'only files under this folder are read', '.')
    .option(
      '--silence <SECONDS>',
      'seconds without an answer from a worker before its files go to others',
      upTo(99, 'whole number of seconds'),
      20,
    )
    .option(...QUEUE_WAIT)
    .action(async ({ queue, workers, root, silence, wait }: Options) => {
      await withFile(root, () => stat(root))
      const { startWorker } = await import('../queue/queue-worker.js')
      const worker = await startWorker({
        url: queue,
        workers,
        root,
        silence_ms: silence * 1000,
        wait_s: wait,
        say: terminal.err,
      })
      // Listened for before it says so: whoever reads that may stop it at once.
      const told = new Promise<void>((resolve) => {
        process.once('SIGTERM', resolve)
        process.once('SIGINT', resolve)
        worker.gone.addEventListener('abort', () => resolve(), { once: true })
      })
      terminal.err('draughtbook: waiting for files')
      await told
      // What is in hand is finished; what is not begun stays for others.
      await worker.close()
      worker.gone.throwIfAborted()
    })
}
