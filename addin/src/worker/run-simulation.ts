import type { TestRecord } from '@draughtbook/shared-calc'
import type { SimulationMessage } from './simulation-worker.js'

/**
 * Draws a test many times in a worker of its own, telling every message as it comes.
 * @returns a call that stops it
 */
export function runSimulation(
  record: TestRecord,
  draws: number,
  tell: (message: SimulationMessage) => void,
): () => void {
  const worker = new Worker(new URL('./simulation-worker.ts', import.meta.url), { type: 'module' })
  const stop = () => worker.terminate()
  worker.onmessage = ({ data }: MessageEvent<SimulationMessage>) => {
    tell(data)
    if (data.kind !== 'progress') stop()
  }
  worker.onerror = ({ message }) => {
    tell({ kind: 'failed', words: message || 'the simulation could not be loaded' })
    stop()
  }
  worker.postMessage({ record, draws })
  return stop
}
