// Loaded into a service: measures how much processor time its event loop spends between two turns. Unlike time by the clock, what
// else runs on the machine does not lengthen it. SIGUSR2 prints the longest and begins again.
import { readFileSync } from 'node:fs'
import { isMainThread } from 'node:worker_threads'

if (isMainThread) {
  // Time on a processor of this thread, ns. Source: Linux, Documentation/scheduler/sched-stats.rst.
  const used_ms = () => Number(readFileSync('/proc/thread-self/schedstat', 'utf8').split(' ')[0]) / 1e6
  let [last, longest] = [used_ms(), 0]
  const look = () => {
    const now = used_ms()
    longest = Math.max(longest, now - last)
    last = now
  }
  setInterval(look, 2).unref()
  process.on('SIGUSR2', () => {
    look()
    process.stderr.write(`longest hold ${longest.toFixed(1)} ms\n`)
    longest = 0
  })
}
