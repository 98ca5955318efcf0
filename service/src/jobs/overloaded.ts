import { HttpFault } from '../http/http-fault.js'

/** Too much to do at the moment. */
export const overloaded = () =>
  new HttpFault(503, 'The service is busy', {
    kind: 'busy',
    detail: 'more requests are waiting than can be kept; try again shortly',
    headers: { 'retry-after': '2' },
  })
