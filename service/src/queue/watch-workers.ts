import type { Queue } from 'bullmq'

/** How often it is looked whether a worker is there. */
const LOOK_MS = 3000

/** Says once that files wait and no worker is there, and again after the next worker has gone. */
export function watchWorkers(queue: Queue, say: (line: string) => void): { stop(): void } {
  let said = false
  const look = async () => {
    const [workers, waiting] = await Promise.all([queue.getWorkersCount(), queue.getWaitingCount()])
    const none = workers === 0 && waiting > 0
    if (none && !said)
      say(
        `draughtbook: no worker is connected to the queue; ${waiting === 1 ? '1 file waits' : `${waiting} files wait`}. Start one with: draughtbook worker --queue redis://… --root FOLDER`,
      )
    said = none
  }
  // Redis may refuse the list of its clients, or be away for a moment: neither stops the work.
  const timer = setInterval(() => void look().catch(() => undefined), LOOK_MS)
  return { stop: () => clearInterval(timer) }
}
