import { ServiceProblem } from './service-problem.js'

/** Why the firm's library cannot be had, in words for the pane. */
export function libraryFault(error: unknown): string {
  if (!(error instanceof ServiceProblem)) return 'The service cannot be reached: enter the devices by hand.'
  if (error.status === 404) return 'The service has no library of devices.'
  return error.status === 401
    ? 'The service asks for an access token.'
    : `The service answered ${error.status}: ${error.message}.`
}
