// A worker's entry for tests: files called "poison" kill its thread, files called "slow" never end.
import work from '../../service/dist/archive/thread-entry.js'

export default async (order) => {
  const { file } = order.order
  if (file.includes('poison')) process.exit(3)
  if (file.includes('slow')) {
    Atomics.store(order.flag, 0, 1)
    order.begun.postMessage('begun')
    for (;;) Math.sqrt(2)
  }
  return work(order)
}
