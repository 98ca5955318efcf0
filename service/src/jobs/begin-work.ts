import { begin } from './call-off.js'
import type { Begins } from './in-thread.js'

/** For the entry of a thread: does the work of an order, unless it was called off while it waited. */
export async function beginWork<T>({ flag, begun }: Begins, work: () => Promise<T>): Promise<T | undefined> {
  const wanted = begin(flag)
  begun.postMessage('begun')
  begun.close()
  return wanted ? work() : undefined
}
