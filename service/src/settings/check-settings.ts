import { isIP } from 'node:net'
import { anyOf } from '@draughtbook/shared-calc'
import { isLoopback, LOG_LEVELS, type Settings } from './settings.js'

/** Why the service cannot start with these settings, one sentence each; empty if it can. */
export function settingsFaults(settings: Settings): string[] {
  return [
    ...exposure(settings),
    ...pairs(settings),
    ...addresses(settings),
    ...amounts(settings),
    ...level(settings),
  ]
}

/** From other machines the service is used only encrypted and by known callers. */
function exposure(settings: Settings): string[] {
  const { host, behindProxy, proxies, tlsCertificate, tokens, oidcIssuer, publicUrl } = settings
  const reachable = !isLoopback(host) || behindProxy
  const faults: string[] = []
  if (!isLoopback(host) && !behindProxy && tlsCertificate === undefined)
    faults.push(
      `${host} can be reached from other machines: give --tls-certificate and --tls-key, or --behind-proxy if a proxy handles TLS`,
    )
  if (reachable && tokens === undefined && oidcIssuer === undefined)
    faults.push(
      'other machines can reach the service: give --tokens FILE (made by `draughtbook token add`) or --oidc-issuer',
    )
  for (const proxy of proxies)
    if (!isNetwork(proxy))
      faults.push(`--proxy must be an IP address, a network such as 10.0.0.0/8, or loopback, not ${proxy}`)
  if (behindProxy && publicUrl === undefined)
    faults.push('--behind-proxy needs --public-url, the https address that users see')
  return faults
}

function pairs({ tlsCertificate, tlsKey, oidcIssuer, oidcAudience }: Settings): string[] {
  const faults: string[] = []
  if ((tlsCertificate === undefined) !== (tlsKey === undefined))
    faults.push('--tls-certificate and --tls-key go together')
  if ((oidcIssuer === undefined) !== (oidcAudience === undefined))
    faults.push(
      '--oidc-issuer and --oidc-audience go together: without an audience, tokens made for other services would be accepted',
    )
  return faults
}

function addresses({ publicUrl, oidcIssuer, oidcJwks, origins }: Settings): string[] {
  const faults: string[] = []
  for (const [name, value] of Object.entries({
    '--public-url': publicUrl,
    '--oidc-issuer': oidcIssuer,
    '--oidc-jwks': oidcJwks,
  }))
    if (value !== undefined && !isSafeUrl(value))
      faults.push(`${name} must be an https address, not ${JSON.stringify(value)}`)
  for (const origin of origins)
    if (!isSafeUrl(origin) || new URL(origin).origin !== origin)
      faults.push(
        `--origin must be an https origin such as https://pane.example, not ${JSON.stringify(origin)}`,
      )
  return faults
}

/** https, or http on this machine, as for development. */
function isSafeUrl(text: string): boolean {
  if (!URL.canParse(text)) return false
  const { protocol, hostname } = new URL(text)
  return protocol === 'https:' || (protocol === 'http:' && isLoopback(hostname))
}

function amounts(settings: Settings): string[] {
  const bounds: [keyof Settings, number, number][] = [
    ['port', 0, 65_535],
    ['workers', 1, 64],
    ['queue', 0, 100_000],
    ['concurrency', 1, 100_000],
    ['timeout_s', 1, 3600],
    ['rate', 0, 1e6],
    ['grace_s', 0, 3600],
    ['drain_s', 0, 3600],
  ]
  return bounds.flatMap(([name, lowest, highest]) => {
    const value = settings[name]
    return Number.isInteger(value) && Number(value) >= lowest && Number(value) <= highest
      ? []
      : [`--${name.replace('_s', '')} must be a whole number from ${lowest} to ${highest}`]
  })
}

function level({ logLevel }: Settings): string[] {
  return LOG_LEVELS.includes(logLevel)
    ? []
    : [`--log-level must be ${anyOf(LOG_LEVELS)}, not ${JSON.stringify(logLevel)}`]
}

/** An address, a network of addresses, or a name that express knows for some of them. */
function isNetwork(text: string): boolean {
  if (['loopback', 'linklocal', 'uniquelocal'].includes(text)) return true
  const [address = '', bits, more] = text.split('/')
  const version = isIP(address)
  if (version === 0 || more !== undefined) return false
  return bits === undefined || (/^\d{1,3}$/.test(bits) && Number(bits) <= (version === 4 ? 32 : 128))
}
