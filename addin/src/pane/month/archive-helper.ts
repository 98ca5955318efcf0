import type { Answer, Answers, Asked } from './archive-messages.js'

/** Longest time for one file: a hostile one must not hold the others up. */
const LIMIT_MS = 60_000

/** A worker that answers one question at a time. One that hangs or dies is replaced by a fresh one. */
export class ArchiveHelper {
  #worker: Worker | undefined
  #number = 0
  #isAsked = false
  #stop: (why: Error) => void = () => undefined

  /** Rejects with an Error that can be shown. */
  ask<Kind extends Asked['kind']>(
    asked: Extract<Asked, { kind: Kind }>,
    limit_ms = LIMIT_MS,
  ): Promise<Answers[Kind]> {
    this.#worker ??= new Worker(new URL('./archive-worker.ts', import.meta.url), { type: 'module' })
    const worker = this.#worker
    this.#number += 1
    this.#isAsked = true
    const number = this.#number
    return new Promise((resolve, reject) => {
      const late = setTimeout(() => this.#fail('it took too long and was stopped', reject), limit_ms)
      const settled = (then: () => void): void => {
        clearTimeout(late)
        this.#isAsked = false
        then()
      }
      this.#stop = (why) => settled(() => reject(why))
      worker.onmessage = ({ data }: MessageEvent<Answer>) => {
        if (data.number !== number) return
        settled(() => {
          if ('fault' in data) reject(new Error(data.fault))
          else resolve(data.value as Answers[Kind])
        })
      }
      worker.onerror = ({ message }) =>
        settled(() => this.#fail(message || 'this part of the pane could not be loaded', reject))
      worker.postMessage({ number, asked })
    })
  }

  /** Whether a question is not answered yet. */
  get isAsked(): boolean {
    return this.#isAsked
  }

  /** Ends whatever it is at; the question is rejected. */
  end(): void {
    this.#worker?.terminate()
    this.#worker = undefined
    this.#stop(new Error('stopped'))
  }

  #fail(why: string, reject: (error: Error) => void): void {
    this.#worker?.terminate()
    this.#worker = undefined
    this.#isAsked = false
    reject(new Error(why))
  }
}

/** Helpers that have done their work, kept for the next, of whatever view: their code is loaded once. */
const spare: ArchiveHelper[] = []
/** As many as one run takes. */
const MOST_SPARE = 2

export const takeHelper = (): ArchiveHelper => spare.pop() ?? new ArchiveHelper()

/** Gives a helper back. One that is still asked something, by a run that was stopped or failed, ends. */
export function giveBack(helper: ArchiveHelper): void {
  if (!helper.isAsked && spare.length < MOST_SPARE) spare.push(helper)
  else helper.end()
}
