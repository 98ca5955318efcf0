import { type AddressInfo, connect, createServer } from 'node:net'

// A plain TCP balancer in a process of its own: it passes bytes on, a connection to each of the addresses in turn that says it is ready.
const addresses = process.argv.slice(2).map((base) => new URL(base))
const ready = new Set(addresses)

setInterval(async () => {
  for (const address of addresses) {
    const answer = await fetch(new URL('/readyz', address)).catch(() => undefined)
    // The peer has no such page; it is taken as ready.
    if (answer && answer.status !== 503) ready.add(address)
    else ready.delete(address)
  }
}, 100)

let turn = 0
const server = createServer((caller) => {
  const those = [...ready]
  const address = those[turn++ % those.length]
  if (!address) return void caller.destroy()
  const replica = connect(Number(address.port), '127.0.0.1')
  for (const socket of [caller, replica]) socket.setNoDelay(true)
  caller.pipe(replica).pipe(caller)
  caller.on('error', () => replica.destroy())
  replica.on('error', () => caller.destroy())
})
server.listen(0, '127.0.0.1', () => {
  console.log(`draughtbook: http://127.0.0.1:${(server.address() as AddressInfo).port}`)
})
