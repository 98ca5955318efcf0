import { setTimeout as wait } from 'node:timers/promises'
import { counted } from '@draughtbook/shared-calc'
import type { Redis } from 'ioredis'
import { UsageError } from '../cli/errors.js'
import { withoutPassword } from './connect.js'

/** How often a server is asked whether it answers, and how long it may take to. */
const EVERY_MS = 2000
const ANSWER_MS = 3000

export interface PulseOptions {
  readonly url: string
  /** Is given a line to print when the server no longer answers, and when it does again. */
  readonly say: (line: string) => void
  /** How long it is waited for, s. */
  readonly wait_s: number
}

/**
 * Watches whether a Redis server answers. While it does not, every order to it waits: it may have ended, hang, or be cut off, and
 * nobody else would say so.
 */
export class Pulse {
  private readonly given = new AbortController()
  private limit: NodeJS.Timeout | undefined
  private stopped = false
  private waiting: (() => void)[] = []

  constructor(
    private readonly redis: Redis,
    private readonly options: PulseOptions,
  ) {
    redis.on('close', this.lost)
    void this.listen()
  }

  /** Aborted once the server has not answered for as long as it is waited for; its reason is a UsageError. */
  get over(): AbortSignal {
    return this.given.signal
  }

  /** Does work that needs the server to end in order; what does not wait for it, where it does not answer. */
  async orCut(orderly: Promise<unknown>, cut: () => void): Promise<void> {
    const silent = new Promise<void>((resolve) => {
      if (this.limit !== undefined || this.over.aborted) resolve()
      else this.waiting.push(resolve)
    })
    await Promise.race([orderly.catch(() => undefined), silent])
    this.stop()
    cut()
  }

  private stop(): void {
    this.stopped = true
    this.redis.off('close', this.lost)
    clearTimeout(this.limit)
  }

  private async listen(): Promise<void> {
    while (!this.stopped && !this.over.aborted) {
      const late = setTimeout(this.lost, ANSWER_MS)
      // Where the server is away, the question waits for it like every other order.
      const answers = await this.redis.ping().then(
        () => true,
        () => false,
      )
      clearTimeout(late)
      if (answers) this.found()
      else this.lost()
      await wait(EVERY_MS, undefined, { ref: false })
    }
  }

  private readonly lost = (): void => {
    if (this.stopped || this.limit !== undefined) return
    const { url, say, wait_s } = this.options
    const server = `the Redis server at ${withoutPassword(url)}`
    this.limit = setTimeout(
      () => this.given.abort(new UsageError(`${server} has not answered for ${inWords(wait_s)}`)),
      wait_s * 1000,
    )
    say(`draughtbook: ${server} does not answer; waiting for it, at most ${inWords(wait_s)}`)
    for (const resolve of this.waiting.splice(0)) resolve()
  }

  private found(): void {
    if (this.stopped || this.limit === undefined) return
    clearTimeout(this.limit)
    this.limit = undefined
    this.options.say('draughtbook: the Redis server answers again')
  }
}

const inWords = (seconds: number): string =>
  seconds % 60 === 0 ? counted(seconds / 60, 'minute') : counted(seconds, 'second')

/** What comes of work, or the signal's reason. The listener goes with the work: a run has thousands of them. */
export async function orAborted<T>(work: Promise<T>, signal: AbortSignal): Promise<T> {
  signal.throwIfAborted()
  let stop = (): void => undefined
  const aborted = new Promise<never>((_, reject) => {
    stop = () => reject(signal.reason as Error)
    signal.addEventListener('abort', stop, { once: true })
  })
  try {
    return await Promise.race([work, aborted])
  } finally {
    signal.removeEventListener('abort', stop)
  }
}
