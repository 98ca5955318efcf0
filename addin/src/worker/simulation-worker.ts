import { InputError, type TestRecord } from '@draughtbook/shared-calc'
import { type SimulatedFigure, simulate } from '@draughtbook/shared-calc/simulation'

export type SimulationMessage =
  | { kind: 'progress'; share: number }
  | { kind: 'done'; figures: SimulatedFigure[] }
  | { kind: 'failed'; words: string }

/** The parts of the worker's own scope that are used; the DOM library names the window's instead. */
const scope = self as unknown as {
  onmessage: ((event: MessageEvent<{ record: TestRecord; draws: number }>) => void) | null
  postMessage(message: SimulationMessage): void
}

scope.onmessage = ({ data: { record, draws } }) => {
  try {
    const steps = simulate(record, { draws })
    for (;;) {
      const step = steps.next()
      if (step.done) {
        scope.postMessage({ kind: 'done', figures: step.value })
        return
      }
      scope.postMessage({ kind: 'progress', share: step.value })
    }
  } catch (error) {
    const words = error instanceof InputError ? error.message : String(error)
    scope.postMessage({ kind: 'failed', words })
  }
}
