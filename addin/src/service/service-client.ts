import type {
  Evaluation,
  LibraryDevice,
  LibraryGauge,
  LibraryTarget,
  ListedFormula,
  Problem,
  TargetPreset,
  TestRecord,
} from '@draughtbook/shared-calc'
import type { LayoutInput } from '@draughtbook/shared-calc/log'
import { ServiceProblem } from './service-problem.js'

/** What an entry of each kind of the library is. */
export interface LibraryKinds {
  devices: LibraryDevice
  gauges: LibraryGauge
  layouts: LayoutInput
  targets: LibraryTarget
}
export type LibraryKind = keyof LibraryKinds

export interface LibraryEntry<Kind extends LibraryKind> {
  readonly id: string
  /** Names the state of the entry. */
  readonly version: string
  readonly value: LibraryKinds[Kind]
}

/** The firm's name, and its logo in base64. */
export interface FirmAnswer {
  readonly name?: string
  readonly logo?: string
  /** The service has a library. */
  readonly library?: true
  /** This access may change it. */
  readonly changesLibrary?: true
}

export interface ClientOptions {
  /** Access token, where the service asks for one. */
  readonly token?: string | undefined
  /** In place of the browser's own; for tests. */
  readonly fetch?: typeof fetch
}

export interface CallOptions {
  readonly signal?: AbortSignal
}

/** The service's API, typed by the shared schemas. Every call rejects with ServiceProblem when the service refuses. */
export class ServiceClient {
  /** @param base - address of the service, with a closing slash */
  constructor(
    private readonly base: URL,
    private readonly options: ClientOptions = {},
  ) {}

  evaluate(record: TestRecord, { trace = false, signal }: CallOptions & { trace?: boolean } = {}) {
    return this.json<Evaluation>('POST', `v1/evaluations${trace ? '?trace=1' : ''}`, { body: record, signal })
  }

  /** The summary workbook of a record, as .xlsx bytes. */
  async workbook(record: TestRecord, { signal }: CallOptions = {}): Promise<Uint8Array> {
    const response = await this.call('POST', 'v1/workbooks', { body: record, signal })
    return new Uint8Array(await response.arrayBuffer())
  }

  async targets({ signal }: CallOptions = {}): Promise<readonly TargetPreset[]> {
    return (await this.json<{ targets: TargetPreset[] }>('GET', 'v1/targets', { signal })).targets
  }

  async formulas({ signal }: CallOptions = {}): Promise<readonly ListedFormula[]> {
    return (await this.json<{ formulas: ListedFormula[] }>('GET', 'v1/formulas', { signal })).formulas
  }

  /** The firm's entries of one kind. Rejects with status 404 where no library is set up. */
  async library<Kind extends LibraryKind>(
    kind: Kind,
    { signal }: CallOptions = {},
  ): Promise<readonly LibraryEntry<Kind>[]> {
    const path = `v1/library/${kind}`
    return (await this.json<{ entries: LibraryEntry<Kind>[] }>('GET', path, { signal })).entries
  }

  /** For the head of the summary; empty where the library has neither name nor logo. */
  firm({ signal }: CallOptions = {}): Promise<FirmAnswer> {
    return this.json<FirmAnswer>('GET', 'v1/firm', { signal })
  }

  /**
   * Saves an entry of the library. Resolves to its new version.
   * @param before - the version that was changed; undefined for a new entry. Status 412: someone else was first
   */
  async save<Kind extends LibraryKind>(
    kind: Kind,
    id: string,
    value: LibraryKinds[Kind],
    before: string | undefined,
    { signal }: CallOptions = {},
  ): Promise<string> {
    const headers = before === undefined ? { 'if-none-match': '*' } : { 'if-match': `"${before}"` }
    const path = `v1/library/${kind}/${encodeURIComponent(id)}`
    return (await this.json<{ version: string }>('PUT', path, { body: value, headers, signal })).version
  }

  /** Removes an entry in the state that was seen; its history stays. */
  async remove(kind: LibraryKind, id: string, version: string, { signal }: CallOptions = {}): Promise<void> {
    const headers = { 'if-match': `"${version}"` }
    await this.call('DELETE', `v1/library/${kind}/${encodeURIComponent(id)}`, { headers, signal })
  }

  private async json<T>(method: string, path: string, sent: Sent): Promise<T> {
    return (await this.call(method, path, sent)).json() as Promise<T>
  }

  private async call(method: string, path: string, { body, headers, signal }: Sent): Promise<Response> {
    const { token, fetch: ask = fetch } = this.options
    const response = await ask(new URL(path, this.base), {
      method,
      headers: {
        ...headers,
        ...(body !== undefined && { 'content-type': 'application/json' }),
        ...(token !== undefined && { authorization: `Bearer ${token}` }),
      },
      ...(body !== undefined && { body: JSON.stringify(body) }),
      ...(signal && { signal }),
    })
    if (response.ok) return response
    throw await problemOf(response)
  }
}

interface Sent {
  readonly body?: unknown
  readonly headers?: Readonly<Record<string, string>>
  readonly signal?: AbortSignal | undefined
}

/** An answer that is not a problem body, such as a proxy's own page, still has its status. */
async function problemOf(response: Response): Promise<ServiceProblem> {
  const body = (await response.json().catch(() => ({}))) as {
    title?: string
    detail?: string
    errors?: Problem[]
  }
  const wait = Number(response.headers.get('retry-after'))
  return new ServiceProblem(response.status, body.title ?? `the service answered ${response.status}`, {
    ...(body.detail !== undefined && { detail: body.detail }),
    problems: body.errors ?? [],
    ...(wait > 0 && { retryAfter_s: wait }),
  })
}
