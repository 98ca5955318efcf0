// A worker's entry for tests, around what ships: files called "poison" kill its thread, files called "slow" never end.
import work from '../../service/dist/bundle/thread-entry.js'

export default async (order) => {
  const { file } = order.order
  if (file.includes('poison')) process.exit(3)
  if (file.includes('slow')) {
    Atomics.store(order.flag, 0, 1)
    order.begun.postMessage('begun')
    // Until shortly before its time is over it takes no processor time from the tests beside it.
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 7500)
    for (;;) Math.sqrt(2)
  }
  return work(order)
}
