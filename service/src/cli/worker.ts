import { stat } from 'node:fs/promises'
import { availableParallelism } from 'node:os'
import { QUEUE_WAIT } from './archive-options.js'
import type { AddCommand } from './command.js'
import { UsageError, withFile } from './errors.js'

interface Options {
  readonly queue: string
  readonly workers: string
  readonly root: string
  readonly silence: string
  readonly wait: number
}

export const addWorker: AddCommand = (command, { terminal }) => {
  command
    .requiredOption('--queue <redis://…>', 'the Redis server that shares out the files')
    .option('--workers <NUMBER>', 'number of threads', String(availableParallelism()))
    .option('--root <FOLDER>', 'only files under this folder are read', '.')
    .option(
      '--silence <SECONDS>',
      'seconds without an answer from a worker before its files go to others',
      '20',
    )
    .option(...QUEUE_WAIT)
    .action(async ({ queue, workers, root, silence, wait }: Options) => {
      for (const [name, text] of Object.entries({ workers, silence }))
        if (!/^[1-9]\d?$/.test(text)) throw new UsageError(`--${name} must be a whole number from 1 to 99`)
      await withFile(root, () => stat(root))
      const { startWorker } = await import('../queue/queue-worker.js')
      const worker = await startWorker({
        url: queue,
        workers: Number(workers),
        root,
        silence_ms: Number(silence) * 1000,
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
