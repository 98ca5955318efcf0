// Loaded before the command line: it then believes to be on another system.
import { isMainThread } from 'node:worker_threads'

if (isMainThread) Object.defineProperty(process, 'platform', { value: process.env.FAKED_PLATFORM })
