import type { ServerResponse } from 'node:http'

/**
 * Ends the connection of a reader who takes nothing of an answer for some time. A finished answer that nobody takes would keep its memory and
 * its place among the requests in hand. An honest reader on a slow line may take as long as it needs.
 */
export function mustBeTaken(response: ServerResponse, pause_ms: number): void {
  // Once the answer has been handed over whole: while it is made, nothing can be taken.
  response.once('prefinish', () => {
    const { socket } = response
    // Node starts this time anew whenever something was taken.
    socket?.setTimeout(pause_ms)
    response.once('finish', () => {
      // Not where another time counts by now, as that of an idle connection does.
      if (socket?.timeout === pause_ms) socket.setTimeout(0)
    })
  })
}
