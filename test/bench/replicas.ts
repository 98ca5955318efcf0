import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { load, type Server, startServer } from './service-load.js'
import { fullLoad } from './steady-load.js'

const BALANCER = join(import.meta.dirname, 'service-balancer.js')
const SECONDS = 5

/**
 * Two replicas behind a plain TCP balancer, beside two of bare express: as both share this machine's processors with balancer and
 * generator, the peer says what more replicas could bring here. Then one replica is stopped under load.
 */
export async function replicas(
  service: readonly string[],
  peer: readonly string[],
  bodies: readonly string[],
): Promise<void> {
  const twice = (args: readonly string[]) => Promise.all([startServer(args), startServer(args)])
  const ours = await twice(service)
  const theirs = await twice(peer)
  const behind = ([one, other]: readonly [Server, Server]) => startServer([BALANCER, one.base, other.base])
  const [front, peerFront] = await Promise.all([behind(ours), behind(theirs)])
  try {
    const options = { seconds: SECONDS, connections: 20 }
    for (const { base } of [front, peerFront]) await fullLoad(base, bodies, options)
    const ceiling = await fullLoad(peerFront.base, bodies, options)
    const good = await fullLoad(front.base, bodies, options)
    console.log(
      `  two replicas behind a plain TCP balancer: ${good.toFixed(0)} a second; two of bare express there ${ceiling.toFixed(0)}, the ceiling of this machine with balancer and generator (${(good / ceiling).toFixed(2)} ×)`,
    )
    const stopped = wait(2000).then(() => ours[0].stop())
    const { statuses, broken } = await load(front.base, bodies, { ...options, rate: good / 4 })
    await stopped
    const counts = Object.entries(statuses).map(([status, count]) => `${count} × ${status}`)
    console.log(
      `  while one of them is stopped, at a quarter of that: ${counts.join(', ')}, ${broken} broken connections`,
    )
  } finally {
    await Promise.all([front, peerFront, ours[1], ...theirs].map((one) => one.stop()))
  }
}
