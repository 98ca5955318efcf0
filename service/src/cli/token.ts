import { existsSync } from 'node:fs'
import { dayInWords } from '@draughtbook/shared-calc'
import type { Command } from 'commander'
import { quoted } from '../input/quoted.js'
import { ROLES, Role } from '../security/caller.js'
import { makeToken } from '../security/tokens/token.js'
import { changeTokens, readTokens, rolesOf, type StoredToken } from '../security/tokens/token-file.js'
import { forgetUse, readUse } from '../security/tokens/token-use.js'
import type { AddCommand } from './command.js'
import { UsageError, withFile } from './errors.js'
import { oneLine, type Terminal } from './terminal.js'

const FILE = ['--tokens <FILE>', 'the token file, as given to `serve`', 'draughtbook-tokens.json'] as const

export const addToken: AddCommand = (command, { terminal }) => {
  const token = command
  addTokenAdd(token, terminal)
  addTokenList(token, terminal)
  addTokenRevoke(token, terminal)
  addTokenRemove(token, terminal)
}

function addTokenAdd(token: Command, terminal: Terminal): void {
  token
    .command('add')
    .description('make a token and show it once; only a salted hash is kept')
    .argument('<NAME>', 'who or what it is for; appears in the audit log')
    .option('--days <NUMBER>', 'days until it expires', '365')
    .option('--role <ROLE...>', `what the token may be used for: ${ROLES.join(', ')}`, [
      'evaluate',
      'archive',
    ])
    .option('--library', 'may also change the firm’s library; the same as --role library')
    .option(...FILE)
    .action(async (name: string, options: AddOptions) => {
      const days = Number(options.days)
      if (!(Number.isInteger(days) && days >= 1 && days <= 3650))
        throw new UsageError('--days must be a whole number from 1 to 3650')
      if (name.trim() === '') throw new UsageError('a name has at least one letter or digit')
      if (!/^[\p{L}\p{N} ._@-]{1,100}$/u.test(name))
        throw new UsageError('a name has 1 to 100 letters, digits, spaces, dots, hyphens, underscores or @')
      const { token: shown, stored } = makeToken(name, days, rolesFor(options))
      await withFile(options.tokens, () => changeTokens(options.tokens, (tokens) => [...tokens, stored]))
      terminal.err(
        `draughtbook: token ${stored.id} for ${name}, valid until ${dayInWords(stored.expires.slice(0, 10))}; this is the only time it is shown`,
      )
      terminal.out(shown)
    })
}

function addTokenList(token: Command, terminal: Terminal): void {
  token
    .command('list')
    .description('list the tokens, without their secrets')
    .option(...FILE)
    .action(async (options: { tokens: string }) => {
      const tokens = await withFile(options.tokens, () => readTokens(options.tokens))
      if (tokens.length === 0)
        terminal.err(
          existsSync(options.tokens)
            ? `draughtbook: there are no tokens in ${options.tokens}`
            : `draughtbook: there is no token file ${options.tokens}; \`draughtbook token add NAME\` makes one, or name yours with --tokens`,
        )
      const lastUse = await readUse(options.tokens)
      for (const one of tokens)
        terminal.out(oneLine(`${one.id}  ${stateOf(one)}  ${useOf(lastUse[one.id])}  ${one.name}`))
    })
}

function addTokenRevoke(token: Command, terminal: Terminal): void {
  token
    .command('revoke')
    .description('revoke a token at once')
    .argument('<ID>', 'id from `token list`')
    .option(...FILE)
    .action(async (id: string, options: { tokens: string }) => {
      const revoked = new Date().toISOString()
      await withFile(options.tokens, () =>
        changeTokens(options.tokens, (tokens) => {
          if (!tokens.some((one) => one.id === id)) throw noToken(id, options.tokens)
          return tokens.map((one) => (one.id === id ? { ...one, revoked: one.revoked ?? revoked } : one))
        }),
      )
      terminal.err(`draughtbook: token ${id} is revoked`)
    })
}

function addTokenRemove(token: Command, terminal: Terminal): void {
  token
    .command('remove')
    .description('revoke a token and delete everything stored about it')
    .argument('<ID>', 'id from `token list`')
    .option(...FILE)
    .action(async (id: string, options: { tokens: string }) => {
      await withFile(options.tokens, () =>
        changeTokens(options.tokens, (tokens) => {
          if (!tokens.some((one) => one.id === id)) throw noToken(id, options.tokens)
          return tokens.filter((one) => one.id !== id)
        }),
      )
      await withFile(options.tokens, () => forgetUse(options.tokens, id))
      terminal.err(`draughtbook: token ${id} is removed`)
    })
}

const noToken = (id: string, file: string): UsageError =>
  new UsageError(
    `there is no token ${id} in ${file}; \`draughtbook token list --tokens ${quoted(file)}\` lists them`,
  )

interface AddOptions {
  readonly days: string
  readonly role: readonly string[]
  readonly library?: boolean
  readonly tokens: string
}

function rolesFor({ role, library }: AddOptions): Role[] {
  const asked = role.flatMap((text) => text.split(','))
  const unknown = asked.find((one) => !Role.safeParse(one).success)
  if (unknown !== undefined) throw new UsageError(`there is no role "${unknown}"; roles: ${ROLES.join(', ')}`)
  return ROLES.filter((one) => asked.includes(one) || (one === 'library' && library))
}

function stateOf({ expires, revoked, ...rights }: StoredToken): string {
  const roles = rolesOf(rights).join(',').padEnd(24)
  if (revoked !== undefined) return `revoked ${day(revoked)}  ${roles}`
  const past = new Date(expires) <= new Date()
  return `${past ? 'expired' : 'until  '} ${day(expires)}  ${roles}`
}

const useOf = (at: string | undefined): string =>
  at === undefined ? 'not used yet'.padEnd(27) : `last used ${day(at)}`

/** A day in words, in a column as wide as the longest. */
const day = (at: string): string => dayInWords(at.slice(0, 10)).padEnd(17)
