import type { Duplex } from 'node:stream'
import { whenTurn } from '../http/in-turn.js'

/**
 * Lets those who wait for a connection's end hear of it one after the other. Hundreds of senders may leave at the same moment, and what
 * each had begun is work to clear away: all of it in one turn would hold the event loop.
 */
export function endInTurn(socket: Duplex): void {
  const emit = socket.emit.bind(socket)
  socket.emit = (event: string | symbol, ...more: unknown[]): boolean => {
    if (event !== 'close') return emit(event, ...more)
    whenTurn(() => void emit(event, ...more))
    return socket.listenerCount(event) > 0
  }
}
