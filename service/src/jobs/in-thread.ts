import { MessageChannel, type MessagePort } from 'node:worker_threads'
import type { Piscina } from 'piscina'

/**
 * A task that may be called off before it begins. Ending a thread costs the next caller its start, up to a second; so a
 * cancelled task is marked, and the thread skips it. Shared with the thread: one cell of memory.
 */
type Flag = Int32Array<SharedArrayBuffer>

const WAITING = 0
const BEGUN = 1
const CALLED_OFF = 2

const newFlag = (): Flag => new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT))

/** For the thread: whether it is to begin. */
export const begin = (flag: Flag): boolean => Atomics.compareExchange(flag, 0, WAITING, BEGUN) === WAITING

/** For the caller: whether it came in time; else the task has begun. */
const callOff = (flag: Flag): boolean => Atomics.compareExchange(flag, 0, WAITING, CALLED_OFF) === WAITING

/** What every order brings along to its thread. */
export interface Begins {
  readonly flag: Flag
  /** Told when work begins: waiting for a thread, and its start, do not count. */
  readonly begun: MessagePort
}

/** How long a task may go on after its caller has disconnected: nearly all finish by then, and their thread is kept. */
const FINISH_MS = 5000

/**
 * How the threads wait for work. By the library's own default a thread sleeps between two tasks without a turn of its
 * event loop, so that it never frees the ports of its tasks: a leak of about 1 kB a task.
 */
export const THREADS = { atomics: 'disabled', idleTimeout: 60_000 } as const

/** The work took longer than it may. */
export class TooLong extends Error {}

export interface InThread<T> {
  readonly result: Promise<T>
  /** Fulfilled once no thread works on it any more, nor ever will; the result may be rejected long before. */
  readonly over: Promise<void>
}

/**
 * Runs an order in a thread. When the signal falls the result is rejected at once; a task that has not begun then never does, one
 * that has goes on for {@link FINISH_MS} before its thread is ended, so that calling off many requests does not end many threads.
 * @param deadline_ms - longest time from its beginning; then the thread is ended and the result rejected with TooLong
 */
export function inThread<T>(
  pool: Piscina,
  order: object,
  signal: AbortSignal,
  deadline_ms?: number,
): InThread<T> {
  const flag = newFlag()
  const { port1, port2 } = new MessageChannel()
  const end = new AbortController()
  const timers: NodeJS.Timeout[] = []
  let late = false
  if (deadline_ms !== undefined && Number.isFinite(deadline_ms))
    port1.once('message', () => {
      timers.push(
        setTimeout(() => {
          late = true
          end.abort()
        }, deadline_ms),
      )
    })
  const work = (
    pool.run({ ...order, flag, begun: port2 }, { signal: end.signal, transferList: [port2] }) as Promise<T>
  ).catch((error: unknown) => {
    throw late ? new TooLong() : error
  })
  let neverBegins: () => void = () => undefined
  const calledOff = new Promise<void>((resolve) => {
    neverBegins = resolve
  })
  let leave: () => void = () => undefined
  const givenUp = new Promise<never>((_resolve, reject) => {
    leave = () => {
      if (callOff(flag)) neverBegins()
      else timers.push(setTimeout(() => end.abort(), FINISH_MS))
      reject(signal.reason as Error)
    }
  })
  const finished = work
    .catch(() => undefined)
    .then(() => {
      for (const timer of timers) clearTimeout(timer)
      signal.removeEventListener('abort', leave)
      port1.close()
    })
  if (signal.aborted) leave()
  else signal.addEventListener('abort', leave, { once: true })
  return { result: Promise.race([work, givenUp]), over: Promise.race([finished, calledOff]) }
}

/** For the entry of a thread: does the work of an order, unless it was called off while it waited. */
export async function beginWork<T>({ flag, begun }: Begins, work: () => Promise<T>): Promise<T | undefined> {
  const wanted = begin(flag)
  begun.postMessage('begun')
  begun.close()
  return wanted ? work() : undefined
}
