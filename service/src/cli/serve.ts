import { existsSync } from 'node:fs'
import { type Command, Option } from 'commander'
import { certificateFiles } from '../excel/certificate.js'
import { thisMachine } from '../excel/machine.js'
import { excelOn } from '../excel/set-up.js'
import { defaultSettings, type Settings } from '../settings/settings.js'
import type { AddCommand } from './command.js'
import { UsageError } from './errors.js'

/** A number of digits alone; anything else is not a number. */
export const whole = (text: string): number => (/^\d{1,9}$/.test(text) ? Number(text) : Number.NaN)
const list = (text: string, before: readonly string[] = []): string[] => [
  ...before,
  ...text.split(/[\s,]+/).filter(Boolean),
]

const d = defaultSettings

/** The first one given stands in place of the default. */
const proxies = (text: string, before: readonly string[] = []): string[] =>
  list(text, before === d.proxies ? [] : before)

type Row = [flags: string, says: string, more?: (option: Option) => Option]

const number =
  (value: number) =>
  (option: Option): Option =>
    option.argParser(whole).default(value)

/** Every setting with its option; its environment variable is DRAUGHTBOOK_ and the option's name. */
const ROWS: readonly Row[] = [
  ['--port <NUMBER>', 'port to listen on', number(d.port)],
  ['--host <ADDRESS>', 'address to listen on', (option) => option.default(d.host)],
  ['--tls-certificate <FILE>', 'certificate chain (PEM); with --tls-key, the service itself uses https'],
  ['--tls-key <FILE>', 'private key (PEM)'],
  ['--excel', 'https for Excel on this computer, with the certificate made by `draughtbook excel`'],
  ['--behind-proxy', 'a proxy in front handles TLS and passes on the client address'],
  [
    '--proxy <ADDRESS...>',
    'addresses or networks of that proxy; X-Forwarded-For is trusted from these only',
    (option) => option.argParser(proxies).default(d.proxies),
  ],
  ['--public-url <URL>', 'address that users see'],
  ['--tokens <FILE>', 'access tokens, made by `draughtbook token add`'],
  ['--oidc-issuer <URL>', 'OpenID Connect issuer whose access tokens are accepted'],
  ['--oidc-audience <NAME>', 'required audience of those tokens'],
  ['--oidc-jwks <URL>', 'address of the issuer’s keys, if it publishes no configuration'],
  [
    '--origin <URL...>',
    'other origins whose pages may call the API',
    (option) => option.argParser(list).default([]),
  ],
  ['--library <FOLDER>', 'the firm’s devices, gauges, layouts and targets'],
  ['--pane <FOLDER>', 'folder of the built pane, if not the project’s own'],
  [
    '--workers <NUMBER>',
    'threads for workbooks; evaluations get the same number, at most 3',
    number(d.workers),
  ],
  ['--queue <NUMBER>', 'maximum number of waiting tasks', number(d.queue)],
  [
    '--concurrency <NUMBER>',
    'maximum number of requests at the same time; small ones beyond it wait up to half a second',
    number(d.concurrency),
  ],
  ['--timeout <SECONDS>', 'seconds that one request may take', number(d.timeout_s)],
  ['--rate <NUMBER>', 'requests per minute and caller, 0 for no limit', number(d.rate)],
  ['--grace <SECONDS>', 'seconds to wait for running requests when stopping', number(d.grace_s)],
  ['--drain <SECONDS>', 'seconds to keep serving after /readyz answers 503', number(d.drain_s)],
  [
    '--log-level <LEVEL>',
    'fatal, error, warn, info, debug or silent',
    (option) => option.default(d.logLevel),
  ],
]

export function addServeOptions(command: Command): Command {
  for (const [flags, says, more = (option: Option) => option] of ROWS) {
    const option = more(new Option(flags, says))
    command.addOption(option.env(`DRAUGHTBOOK_${option.name().replaceAll('-', '_').toUpperCase()}`))
  }
  return command
}

type Parsed = Omit<Settings, 'origins' | 'proxies' | 'timeout_s' | 'grace_s' | 'drain_s' | 'behindProxy'> & {
  origin: readonly string[]
  proxy: readonly string[]
  timeout: number
  grace: number
  drain: number
  behindProxy?: boolean | string
  excel?: boolean | string
}

/** What commander read, as settings. */
export function settingsOf(parsed: Parsed): Settings {
  const { origin, proxy, timeout, grace, drain, behindProxy, excel, ...rest } = parsed
  return {
    ...rest,
    ...(isOn(excel) ? certificateForExcel(rest) : {}),
    origins: origin,
    proxies: proxy,
    timeout_s: timeout,
    grace_s: grace,
    drain_s: drain,
    behindProxy: isOn(behindProxy),
  }
}

/** An environment variable that is set switches its option on. */
const isOn = (option: boolean | string | undefined): boolean => option !== undefined && option !== false

/** The files that `draughtbook excel` made. */
function certificateForExcel(given: Pick<Settings, 'tlsCertificate' | 'tlsKey'>) {
  const excel = excelOn(thisMachine())
  if (!excel) throw new UsageError('--excel: Excel does not run on this system')
  if (given.tlsCertificate ?? given.tlsKey)
    throw new UsageError('give --excel, or --tls-certificate and --tls-key, not both')
  const { certificate: tlsCertificate, key: tlsKey } = certificateFiles(excel.folder)
  if (!existsSync(tlsCertificate))
    throw new UsageError('--excel: run `draughtbook excel` first; it makes the certificate')
  return { tlsCertificate, tlsKey }
}

export const addServe: AddCommand = (command, { terminal, end }) => {
  addServeOptions(command).action(async (options: Parameters<typeof settingsOf>[0]) => {
    // Loaded here, so that the other commands do not wait for a server they do not need.
    const { runService } = await import('../running/run-service.js')
    const ended = await runService(settingsOf(options), terminal)
    if ('faults' in ended) throw new UsageError(ended.faults.join('\n'))
    end(ended.code)
  })
}
