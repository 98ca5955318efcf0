import { accessToken } from './access-token.js'
import { type FirmAnswer, ServiceClient } from './service-client.js'
import { ServiceProblem } from './service-problem.js'

/** The firm's name and logo for the head of the summary. */
export interface FirmsHead {
  readonly name?: string
  readonly logo?: Uint8Array
}

const KEY = 'draughtbook.firm'
const LIMIT_MS = 4000

/**
 * The firm's name and logo from its library on the service that serves this page; where that cannot be reached, as they were last
 * time. `note` says what is left out of the page, and why.
 */
export async function firmsHead(base: URL): Promise<{ firm?: FirmsHead; note?: string }> {
  const service = new ServiceClient(base, { token: accessToken() })
  try {
    const answer = await service.firm({ signal: AbortSignal.timeout(LIMIT_MS) })
    keep(answer)
    return headIn(answer)
  } catch (error) {
    const found = kept()
    const why =
      error instanceof ServiceProblem ? (error.detail ?? error.message) : 'the service cannot be reached'
    if (found?.lost) return { ...headIn(found), note: `The firm’s logo is left out: ${why}.` }
    // Without an answer ever, and without a library, there is nothing to miss.
    if (found || !(error instanceof ServiceProblem)) return found ? headIn(found) : {}
    return { note: `The firm’s name and logo are left out: ${why}.` }
  }
}

/** As it is kept here. `lost`: there is a logo, too large to be kept. */
type Kept = FirmAnswer & { lost?: true }

const headIn = (found: FirmAnswer): { firm?: FirmsHead } =>
  found.name === undefined && found.logo === undefined ? {} : { firm: headOf(found) }

const headOf = ({ name, logo }: FirmAnswer): FirmsHead => ({
  ...(name !== undefined && { name }),
  ...(logo !== undefined && { logo: Uint8Array.from(atob(logo), (letter) => letter.charCodeAt(0)) }),
})

function kept(): Kept | undefined {
  try {
    return JSON.parse(globalThis.localStorage.getItem(KEY) ?? 'null') ?? undefined
  } catch {
    return undefined
  }
}

function keep(answer: FirmAnswer): void {
  const { logo, ...rest } = answer
  for (const state of [answer, { ...rest, ...(logo !== undefined && { lost: true }) }])
    try {
      globalThis.localStorage.setItem(KEY, JSON.stringify(state))
      return
    } catch {
      // No room for the logo: that there is one is kept, so that a page without it says so. Without any storage nothing is.
    }
}
