import { availableParallelism } from 'node:os'

/** How the service runs. Every field is an option of `draughtbook serve` and an environment variable. */
export interface Settings {
  readonly host: string
  readonly port: number
  /** PEM files; both or neither. */
  readonly tlsCertificate?: string | undefined
  readonly tlsKey?: string | undefined
  /** A proxy in front ends TLS and names the client. */
  readonly behindProxy: boolean
  /** Addresses and networks of proxies whose word on the caller's address is taken: `10.0.0.5`, `10.0.0.0/8`, `loopback`. */
  readonly proxies: readonly string[]
  /** Address that users see, where it is not the one listened on. */
  readonly publicUrl?: string | undefined
  /** File of access tokens. */
  readonly tokens?: string | undefined
  readonly oidcIssuer?: string | undefined
  readonly oidcAudience?: string | undefined
  /** Address of the issuer's keys, where it does not publish its configuration. */
  readonly oidcJwks?: string | undefined
  /** Other origins whose pages may call the API, such as the add-in's. */
  readonly origins: readonly string[]
  /** Folder of the firm's library. */
  readonly library?: string | undefined
  /** Folder of the built pane. */
  readonly pane?: string | undefined
  readonly workers: number
  /** Most tasks waiting for a worker. */
  readonly queue: number
  /** Most requests in hand at one time. */
  readonly concurrency: number
  /** Longest time for one request, s. */
  readonly timeout_s: number
  /** Requests a minute for one caller; 0: no limit. */
  readonly rate: number
  /** Longest wait for running requests when stopping, s. */
  readonly grace_s: number
  /** How long to go on serving after readiness is withdrawn, s, so that a balancer notices. */
  readonly drain_s: number
  readonly logLevel: string
}

/** What the log may hold, the least first. */
export const LOG_LEVELS = ['silent', 'fatal', 'error', 'warn', 'info', 'debug']

export const defaultSettings: Settings = {
  host: '127.0.0.1',
  port: 8460,
  behindProxy: false,
  proxies: ['loopback'],
  origins: [],
  // One core stays with the event loop.
  workers: Math.max(1, availableParallelism() - 1),
  queue: 64,
  concurrency: 128,
  timeout_s: 30,
  rate: 600,
  grace_s: 30,
  drain_s: 0,
  logLevel: 'info',
}

const LOOPBACK = /^(localhost|127(\.\d{1,3}){3}|::1|\[::1\])$/

export const isLoopback = (host: string): boolean => LOOPBACK.test(host)

/** Whether anybody who reaches the service may use it: on this machine only, with nothing in front, and no access set up. */
export const isOpen = (settings: Settings): boolean =>
  isLoopback(settings.host) &&
  !settings.behindProxy &&
  settings.tokens === undefined &&
  settings.oidcIssuer === undefined
