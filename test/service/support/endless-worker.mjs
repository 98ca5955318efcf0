// A worker's entry for tests: reading a file never ends, everything else is done.
import work from '../../../service/dist/bundle/worker.js'

export default (order) => {
  if (order.name !== 'registerFile') return work(order)
  Atomics.store(order.flag, 0, 1)
  order.begun.postMessage('begun')
  for (;;) Math.sqrt(2)
}
