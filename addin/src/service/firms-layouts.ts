import type { LayoutInput } from '@draughtbook/shared-calc/log'
import { accessToken } from './access-token.js'
import { ServiceClient } from './service-client.js'
import { ServiceProblem } from './service-problem.js'

/** How long a log waits for the firm's layouts, from when they were asked for. */
const WAIT_MS = 1000
/** When the service is given up. Nobody waits for that. */
const LIMIT_MS = 60_000

export interface FirmsLayouts {
  readonly layouts: readonly LayoutInput[]
  /** There is a library, and this access may change it. */
  readonly mayChange: boolean
}

/** The firm's layouts on the service that serves this page, asked for once. */
export class AskedLayouts {
  /** What the service says; undefined where it cannot be reached. */
  readonly answer: Promise<FirmsLayouts | undefined>
  readonly #soon: Promise<void>
  #found: FirmsLayouts | undefined
  #settled = false

  constructor(base: URL, wait_ms = WAIT_MS) {
    this.answer = firmsLayouts(base)
    const settled = this.answer.then((found) => {
      this.#found = found
      this.#settled = true
    })
    this.#soon = Promise.race([settled, new Promise<void>((resolve) => setTimeout(resolve, wait_ms))])
  }

  /** The layouts as far as they are there, a second after the asking at the latest. `late`: the answer is still to come. */
  async soon(): Promise<{ layouts: readonly LayoutInput[]; late: boolean }> {
    await this.#soon
    return { layouts: this.#found?.layouts ?? [], late: !this.#settled }
  }
}

async function firmsLayouts(base: URL): Promise<FirmsLayouts | undefined> {
  const service = new ServiceClient(base, { token: accessToken() })
  const signal = AbortSignal.timeout(LIMIT_MS)
  try {
    const { library, changesLibrary } = await service.firm({ signal })
    if (!library) return NONE
    const entries = await service.library('layouts', { signal })
    return { layouts: entries.map(({ value }) => value), mayChange: changesLibrary === true }
  } catch (error) {
    // A log is read without them as well; what the service refuses elsewhere is said there.
    return error instanceof ServiceProblem ? NONE : undefined
  }
}

const NONE: FirmsLayouts = { layouts: [], mayChange: false }
