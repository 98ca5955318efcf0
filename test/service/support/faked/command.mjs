// Stands in for the programs of Windows and macOS that set up an add-in. Called with their names, it keeps what they would change
// in one file, and refuses whatever needs an administrator. Options as in the systems' own help (value from memory).
import { X509Certificate } from 'node:crypto'
import { appendFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs'

const path = process.env.FAKED_STATE
const state = existsSync(path)
  ? JSON.parse(readFileSync(path, 'utf8'))
  : { trusted: [], registry: {}, opened: 0 }
const [name, ...args] = process.argv.slice(2)
appendFileSync(`${path}.calls`, `${name} ${args.join(' ')}\n`)

const fingerprint = (file) => new X509Certificate(readFileSync(file)).fingerprint.replaceAll(':', '')
const after = (option) => args[args.indexOf(option) + 1]
const refuse = (text, code = 5) => {
  console.error(text)
  process.exit(code)
}
const trust = (file) => state.trusted.push(fingerprint(file))
const distrust = (hash) => {
  if (!state.trusted.includes(hash)) refuse('no such certificate', 1)
  if (state.refuses) refuse('The operation was cancelled by the user.', 1)
  state.trusted = state.trusted.filter((one) => one !== hash)
}
const isTrusted = (hash) => state.trusted.includes(hash) || refuse('not found', 1)

const programs = {
  'certutil.exe': () => {
    if (args[0] !== '-user') refuse('Access is denied.')
    const [, verb, store, what] = args
    if (store !== 'Root') refuse(`no store ${store}`, 1)
    if (verb === '-addstore') trust(what)
    else if (verb === '-delstore') distrust(what)
    else isTrusted(what)
  },
  'reg.exe': () => {
    const [verb, key] = args
    if (!key.startsWith('HKCU\\')) refuse('Access is denied.')
    const entry = `${key}\\${after('/v')}`
    if (verb === 'add') state.registry[entry] = after('/d')
    else if (!(entry in state.registry)) refuse('unable to find the specified registry key or value', 1)
    else if (verb === 'delete') delete state.registry[entry]
  },
  'cmd.exe': () => state.opened++,
  security: () => {
    if (args.includes('-d') || args.includes('/Library/Keychains/System.keychain')) refuse('not permitted')
    if (args[0] === 'add-trusted-cert') trust(args.at(-1))
    else if (args[0] === 'delete-certificate') distrust(after('-Z'))
    else isTrusted(fingerprint(after('-c')))
  },
  open: () => state.opened++,
  sudo: () => refuse('no administrator here'),
}
programs[name]()
writeFileSync(path, JSON.stringify(state))
