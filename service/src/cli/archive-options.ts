import { availableParallelism } from 'node:os'
import { dayOf } from '@draughtbook/shared-calc'
import { type Command, InvalidArgumentError } from 'commander'
import { type FileRunner, runnerHere } from '../archive/run-archive.js'

/** Options that every command on an archive has. */
export interface ArchiveOptions {
  readonly layout: readonly string[]
  readonly workers: number
  readonly queue?: string
  readonly wait: number
  readonly asOf: string
  readonly json?: boolean
}

/** @param what - "whole number", and what of */
export const upTo =
  (most: number, what = 'whole number') =>
  (text: string): number => {
    if (!/^[1-9]\d*$/.test(text) || Number(text) > most)
      throw new InvalidArgumentError(`give a ${what} from 1 to ${most}`)
    return Number(text)
  }

/** Option of whoever uses a queue. */
export const QUEUE_WAIT = [
  '--wait <SECONDS>',
  'seconds to wait for a Redis server that stops answering',
  upTo(99_999, 'whole number of seconds'),
  600,
] as const

export const isoDate = (text: string): string => {
  const date = new Date(`${text}T00:00:00Z`)
  if (!/^\d{4}-\d\d-\d\d$/.test(text) || Number.isNaN(date.getTime()) || !date.toISOString().startsWith(text))
    throw new InvalidArgumentError('give a date such as 2026-10-31')
  return text
}

export const collect = (value: string, before: readonly string[]): string[] => [...before, value]

export function addArchiveOptions(command: Command): Command {
  return command
    .argument('<PATH...>', 'workbooks, and folders with workbooks')
    .option('--layout <LAYOUT.json>', 'layout for logs in other workbooks; may be repeated', collect, [])
    .option('--as-of <DATE>', 'date to use as today', isoDate, dayOf())
    .option('--workers <NUMBER>', 'number of threads', upTo(99), availableParallelism())
    .option('--queue <redis://…>', 'share the work with workers on other machines through this Redis server')
    .option(...QUEUE_WAIT)
    .option('--json', 'print only the result, as JSON')
}

/** Below this many files, starting threads takes longer than it saves. */
const FEW = 6

/** Where the files are worked on. Threads and queue are loaded only when used. */
export async function runnerFor(
  { workers, queue, wait }: ArchiveOptions,
  files: number,
  say: (line: string) => void,
): Promise<FileRunner> {
  if (queue !== undefined) {
    const { startQueue } = await import('../queue/queue-runner.js')
    return startQueue({ url: queue, wait_s: wait, say })
  }
  if (files <= FEW || workers === 1) return runnerHere
  const { startThreads } = await import('../archive/thread-runner.js')
  return startThreads({ workers: Math.min(workers, files) })
}
