import type { Evaluation } from '@draughtbook/shared-calc'
import type { LiveResult } from '../../calc/live.js'
import { askService } from '../../service/client.js'
import { differenceOf, refusal } from './fault-words.js'
import type { Origin, StoreTimes, TestState } from './test-state.js'

/** Asks the service for the evaluation on show: once entries have settled, and again while it cannot be reached. */
export class ServiceAsked {
  #asking: AbortController | undefined
  #timer: ReturnType<typeof setTimeout> | undefined

  constructor(
    private readonly base: URL,
    private readonly times: Pick<StoreTimes, 'settle_ms' | 'retry_ms'>,
    private readonly state: () => TestState,
    private readonly set: (part: Partial<TestState>) => void,
  ) {}

  soon(): void {
    this.#asking?.abort()
    clearTimeout(this.#timer)
    this.#timer = setTimeout(() => void this.#ask(), this.times.settle_ms)
  }

  stop(origin: Origin | undefined): void {
    this.#asking?.abort()
    clearTimeout(this.#timer)
    if (origin) this.set({ origin })
  }

  async #ask(): Promise<void> {
    const { result, trace } = this.state()
    if (!result?.record || !result.evaluation) return
    const asking = new AbortController()
    this.#asking = asking
    try {
      const answer = await askService(result.record, trace, this.base, asking.signal)
      if (this.state().result !== result) return
      if (answer.kind === 'evaluation') this.#take(answer.evaluation, result)
      else if (answer.kind === 'refused')
        this.set({ origin: { kind: 'local', why: 'refused', words: refusal(answer.problems) } })
      else {
        this.set({
          origin: {
            kind: 'local',
            why: answer.access ? 'access' : 'unreachable',
            words: `Calculated on this device with the same formulas: ${answer.why}`,
          },
        })
        this.#timer = setTimeout(() => void this.#ask(), this.times.retry_ms)
      }
    } catch (error) {
      if (!asking.signal.aborted) throw error
    }
  }

  /** The service knows no cells: findings keep those of the pane's own evaluation. */
  #take(evaluation: Evaluation, { evaluation: own }: LiveResult): void {
    if (!own || evaluation.recordDigest !== own.recordDigest) return
    const difference = differenceOf(evaluation, own)
    this.set({
      evaluation: { ...evaluation, ...(own.trace ? { trace: evaluation.trace ?? own.trace } : {}) },
      origin: difference === undefined ? { kind: 'service' } : { kind: 'service', difference },
    })
  }
}
