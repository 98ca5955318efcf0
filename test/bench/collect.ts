import { isMainThread } from 'node:worker_threads'

// Preloaded into the service whose memory is watched: only what a collection leaves can have been kept by mistake.
const { gc } = globalThis as { gc?: () => void }
if (!gc) throw new Error('start node with --expose-gc')
if (isMainThread)
  setInterval(() => {
    gc()
    console.error(`heap ${process.memoryUsage().heapUsed}`)
  }, 5000).unref()
