import { execFileSync } from 'node:child_process'
import { lstat, readFile, rm, stat, symlink, writeFile } from 'node:fs/promises'
import { hostname } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it, onTestFinished } from 'vitest'
import { operations } from '../../service/src/api/operations'
import { createApp } from '../../service/src/app'
import { ROLES } from '../../service/src/security/caller'
import { makeToken, provenBy } from '../../service/src/security/tokens/token'
import { readTokens, rolesOf, writeTokens } from '../../service/src/security/tokens/token-file'
import { readUse, TokenUse } from '../../service/src/security/tokens/token-use'
import { dayInWords } from '../../shared-calc/src/catalogue/words.js'
import { commandLine, folder } from './support/command-line'
import { listen, postJson } from './support/listen'
import { demoRecord } from './support/record'
import { settings } from './support/settings'

const NOW = new Date('2026-11-25T12:00:00Z')

describe('an access token', () => {
  it('proves itself, and nothing else does', () => {
    const { token, stored } = makeToken('office', 365, ['evaluate', 'archive'], NOW)
    const other = makeToken('site', 365, ['evaluate', 'archive'], NOW)
    const known = [stored, other.stored]
    expect(provenBy(token, known, NOW)).toBe(stored)
    const [prefix, id, secret] = token.split('_')
    const wrong = [
      '',
      token.slice(0, -1),
      `${token}A`,
      `${prefix}_${id}_${'A'.repeat(43)}`,
      `${prefix}_${'0'.repeat(16)}_${secret}`,
      `${prefix}_${other.stored.id}_${secret}`,
      `${prefix}_${id}_${stored.hash}`,
      stored.hash,
    ]
    for (const presented of wrong) expect(provenBy(presented, known, NOW)).toBeUndefined()
  })

  it('ends when it expires or is revoked', () => {
    const { token, stored } = makeToken('office', 1, ['evaluate', 'archive'], NOW)
    expect(provenBy(token, [stored], new Date('2026-11-26T11:59:59Z'))).toBe(stored)
    expect(provenBy(token, [stored], new Date('2026-11-26T12:00:00Z'))).toBeUndefined()
    expect(provenBy(token, [{ ...stored, revoked: NOW.toISOString() }], NOW)).toBeUndefined()
  })

  it('is compared in constant time, also when its id is unknown', async () => {
    // Timing itself cannot be asserted on a shared machine; that the comparison is the constant-time one can.
    const source = await readFile(
      new URL('../../service/src/security/tokens/token.ts', import.meta.url),
      'utf8',
    )
    expect(source).toMatch(/timingSafeEqual\(hashOf\(secret, salt\)/)
    expect(source).toMatch(/stored \?\? NOBODY/)
    expect(source).not.toMatch(/hash === /)
  })
})

describe('draughtbook token', () => {
  it('shows a token once and keeps a salted hash that only the owner can read', async () => {
    const file = join(await folder(), 'tokens.json')
    const made = await commandLine('token', 'add', 'office', '--tokens', file)
    expect(made.code).toBe(0)
    expect(made.out).toMatch(/^dbk_[0-9a-f]{16}_[A-Za-z0-9_-]{43}$/)
    const kept = await readFile(file, 'utf8')
    expect(kept).not.toContain(made.out.split('_')[2])
    expect((await stat(file)).mode & 0o777).toBe(0o600)
    const list = await commandLine('token', 'list', '--tokens', file)
    expect(list.out).toMatch(/until +\d+ [A-Z][a-z]+ 20\d\d +evaluate,archive +not used yet +office$/)
  })

  it('refuses odd names, odd numbers of days and unknown ids', async () => {
    const file = join(await folder(), 'tokens.json')
    expect((await commandLine('token', 'add', 'a\nb', '--tokens', file)).code).toBe(2)
    expect((await commandLine('token', 'add', 'a', '--days', '0', '--tokens', file)).code).toBe(2)
    expect((await commandLine('token', 'revoke', 'ffff', '--tokens', file)).code).toBe(2)
    await writeFile(file, '{}')
    const damaged = await commandLine('token', 'add', 'a', '--tokens', file)
    expect([damaged.code, damaged.err[0]]).toEqual([2, expect.stringContaining('tokens.json: format')])
    expect(await readFile(file, 'utf8')).toBe('{}')
  })
})

describe('a service with tokens', () => {
  async function serviceWith(
    tokens: Parameters<typeof writeTokens>[1],
    more: Parameters<typeof settings>[0] = {},
  ) {
    const file = join(await folder(), 'tokens.json')
    await writeTokens(file, tokens)
    const base = await listen(createApp({ settings: settings({ tokens: file, ...more }) }))
    const ask = (authorization?: string) =>
      postJson(`${base}/v1/evaluations`, JSON.stringify(demoRecord()), authorization ? { authorization } : {})
    return { base, file, ask }
  }

  it('answers those who have one, and 401 with a challenge all others', async () => {
    const good = makeToken('office', 1, ['evaluate', 'archive'])
    const expired = makeToken('old', 1, ['evaluate', 'archive'], new Date('2020-01-01'))
    const revoked = makeToken('lost', 1, ['evaluate', 'archive'])
    const { base, ask } = await serviceWith([
      good.stored,
      expired.stored,
      { ...revoked.stored, revoked: new Date().toISOString() },
    ])
    expect((await ask(`Bearer ${good.token}`)).status).toBe(200)
    for (const wrong of [
      undefined,
      'Bearer',
      'Basic b2ZmaWNlOng=',
      `Bearer ${expired.token}`,
      `Bearer ${revoked.token}`,
      `Bearer ${makeToken('stranger', 1, ['evaluate', 'archive']).token}`,
      `Bearer ${good.token}, ${good.token}`,
    ]) {
      const answer = await ask(wrong)
      expect(answer.status).toBe(401)
      expect(answer.headers.get('www-authenticate')).toMatch(/^Bearer realm="draughtbook"/)
      expect(await answer.text()).not.toContain(good.stored.id)
    }
    for (const path of ['/v1/methods', '/metrics', '/status', '/v1/library', '/v1/none'])
      expect((await fetch(base + path)).status).toBe(401)
    for (const path of ['/healthz', '/readyz', '/openapi.json', '/api'])
      expect((await fetch(base + path)).status).toBe(200)
  })

  it('lets a revoked token in no more within about a second', async () => {
    const { token, stored } = makeToken('office', 1, ['evaluate', 'archive'])
    const { file, ask } = await serviceWith([stored])
    expect((await ask(`Bearer ${token}`)).status).toBe(200)
    await commandLine('token', 'revoke', stored.id, '--tokens', file)
    await expect.poll(async () => (await ask(`Bearer ${token}`)).status, { timeout: 3000 }).toBe(401)
  })

  it('lets a revoked token in no more when the clock is put back', async () => {
    const { token, stored } = makeToken(
      'office',
      30,
      ['evaluate', 'archive'],
      new Date(Date.now() - 7_200_000),
    )
    const { file, ask } = await serviceWith([stored])
    expect((await ask(`Bearer ${token}`)).status).toBe(200)
    await commandLine('token', 'revoke', stored.id, '--tokens', file)
    const now = Date.now
    Date.now = () => now() - 3_600_000
    onTestFinished(() => {
      Date.now = now
    })
    await expect.poll(async () => (await ask(`Bearer ${token}`)).status, { timeout: 10_000 }).toBe(401)
  })

  it('keeps every change of its file when several are made at the same time', async () => {
    const file = join(await folder(), 'tokens.json')
    const first = makeToken('first', 1, ['evaluate'])
    await writeTokens(file, [first.stored])
    const added = Array.from({ length: 12 }, (_, i) => commandLine('token', 'add', `t${i}`, '--tokens', file))
    const revoked = commandLine('token', 'revoke', first.stored.id, '--tokens', file)
    for (const { code } of await Promise.all([...added, revoked])) expect(code).toBe(0)
    const kept = await readTokens(file)
    expect(kept.length).toBe(13)
    expect(kept.find(({ id }) => id === first.stored.id)?.revoked).toBeDefined()
  })

  it('are changed where a link leads to, which stays a link', async () => {
    const place = await folder()
    const [file, link] = [join(place, 'kept.json'), join(place, 'link.json')]
    const { stored } = makeToken('office', 1, ['evaluate'])
    await writeTokens(file, [stored])
    await symlink('kept.json', link)
    expect((await commandLine('token', 'revoke', stored.id, '--tokens', link)).code).toBe(0)
    expect((await readTokens(file))[0]?.revoked).toBeDefined()
    expect((await lstat(link)).isSymbolicLink()).toBe(true)
  })

  it('stay revoked since the first day when they are revoked again', async () => {
    const file = join(await folder(), 'tokens.json')
    const { stored } = makeToken('office', 1, ['evaluate'])
    const revoked = '2026-01-02T03:04:05.000Z'
    await writeTokens(file, [{ ...stored, revoked }])
    expect((await commandLine('token', 'revoke', stored.id, '--tokens', file)).code).toBe(0)
    expect((await readTokens(file))[0]?.revoked).toBe(revoked)
  })

  it('that say nothing of roles change the library only where they say so of that', async () => {
    const { roles: _, ...stored } = makeToken('office', 1, ['evaluate', 'archive']).stored
    expect(rolesOf(stored)).toEqual(['evaluate', 'archive'])
    expect(rolesOf({ ...stored, library: true })).toEqual(['evaluate', 'archive', 'library'])
  })

  it('name the lock where another process does not let go of it', async () => {
    const file = join(await folder(), 'tokens.json')
    // This process lives, so its lock is not one that was left behind.
    await writeFile(`${file}.lock`, `${hostname()} ${process.pid} other`)
    const { code, err } = await commandLine('token', 'add', 'office', '--tokens', file)
    expect(code).toBe(2)
    expect(err.join('\n')).toMatch(
      /another process is changing the same file \(its lock is .*tokens\.json\.lock\)/,
    )
  })

  it.each([
    ['--role', ''],
    ['--role', 'evaluate,'],
    ['--role', '__proto__'],
  ])('are not made with a role that there is not: %s "%s"', async (...given) => {
    const file = join(await folder(), 'tokens.json')
    const { code, err } = await commandLine('token', 'add', 'office', ...given, '--tokens', file)
    expect(code).toBe(2)
    expect(err.join('\n')).toMatch(/there is no role ".*"; roles: evaluate, archive, library/)
    await expect(stat(file)).rejects.toThrow()
  })

  it('have a last use that is right again after the clock was ahead', async () => {
    const file = join(await folder(), 'tokens.json')
    const { stored } = makeToken('office', 1, ['evaluate'])
    const ahead = { format: 'draughtbook/token-use@1', lastUse: { [stored.id]: '2999-01-01T00:00:00.000Z' } }
    await writeFile(`${file}.use.json`, JSON.stringify(ahead))
    new TokenUse(file).note(stored.id)
    await expect.poll(async () => (await readUse(file))[stored.id]).toMatch(/^20/)
    // Names nobody, but says when each of them worked.
    expect((await stat(`${file}.use.json`)).mode & 0o777).toBe(0o600)
  })

  it('opens what its roles name and nothing else, and is listed with its last use', async () => {
    const archivist = makeToken('archivist', 1, ['archive'])
    const { file, ask, base } = await serviceWith([archivist.stored])
    expect((await ask(`Bearer ${archivist.token}`)).status).toBe(403)
    const headers = { authorization: `Bearer ${archivist.token}` }
    expect((await fetch(`${base}/v1/methods`, { headers })).status).toBe(200)
    expect((await fetch(`${base}/v1/registers`, { method: 'POST', headers })).status).toBe(415)
    const today = new Date().toISOString().slice(0, 10)
    await expect
      .poll(async () => (await commandLine('token', 'list', '--tokens', file)).out)
      .toMatch(new RegExp(`archive +last used ${dayInWords(today)} +archivist`))
  })

  it('opens each address that changes or calculates something to one role alone', async () => {
    const owners: Record<string, string> = {
      '/v1/evaluations': 'evaluate',
      '/v1/workbooks': 'evaluate',
      '/v1/readings': 'evaluate',
      '/v1/take-offs': 'evaluate',
      '/v1/plans': 'evaluate',
      '/v1/running-estimates': 'evaluate',
      '/v1/leak-reports': 'evaluate',
      '/v1/registers': 'archive',
      '/v1/buildings': 'archive',
      '/v1/stages': 'archive',
      '/v1/reruns': 'archive',
      '/v1/library/{kind}/{id}': 'library',
      '/v1/library/{kind}/{id}/history': 'library',
    }
    const guarded = operations.filter(({ method }) => method !== 'get')
    expect([...new Set(guarded.map(({ path }) => path))].sort()).toEqual(Object.keys(owners).sort())
    const tokens = ROLES.map((role) => ({ role, ...makeToken(role, 1, [role]) }))
    const { base } = await serviceWith(
      tokens.map(({ stored }) => stored),
      { library: await folder() },
    )
    for (const { method, path } of guarded)
      for (const { role, token } of tokens) {
        const address = path.replace('{kind}', 'gauges').replace('{id}', 'nothing')
        const { status } = await fetch(base + address, {
          method: method.toUpperCase(),
          headers: { authorization: `Bearer ${token}` },
        })
        const said = `${method} ${path} for ${role}: ${status}`
        if (owners[path] === role) expect(status, said).not.toBe(403)
        else expect(status, said).toBe(403)
      }
  })

  it('lets nobody in when the token file is gone or damaged', async () => {
    const { token, stored } = makeToken('office', 1, ['evaluate', 'archive'])
    const { file, ask } = await serviceWith([stored])
    await writeFile(file, 'not JSON')
    const answer = await ask(`Bearer ${token}`)
    expect(answer.status).toBe(503)
    expect(answer.headers.get('retry-after')).toBe('10')
  })

  it('lets nobody in, and does not wait, when the token file leads to a pipe or to what never ends', async () => {
    const { token, stored } = makeToken('office', 1, ['evaluate', 'archive'])
    const { file, ask } = await serviceWith([stored])
    const pipe = join(await folder(), 'pipe')
    execFileSync('mkfifo', [pipe])
    for (const target of [pipe, '/dev/zero']) {
      await rm(file)
      await symlink(target, file)
      await expect.poll(async () => (await ask(`Bearer ${token}`)).status, { timeout: 30_000 }).toBe(503)
      const { code, err } = await commandLine('token', 'list', '--tokens', file)
      expect(code).toBe(2)
      expect(err.join('\n')).toMatch(/tokens\.json: it is not a regular file/)
    }
  })

  it('limits refused attempts of one address and requests of one caller', async () => {
    const { token, stored } = makeToken('office', 1, ['evaluate', 'archive'])
    const file = join(await folder(), 'tokens.json')
    await writeTokens(file, [stored])
    const base = await listen(createApp({ settings: settings({ tokens: file, rate: 5 }) }))
    const get = (authorization: string) => fetch(`${base}/v1/methods`, { headers: { authorization } })
    const mine = await Promise.all(Array.from({ length: 8 }, () => get(`Bearer ${token}`)))
    expect(mine.map(({ status }) => status).sort()).toEqual([200, 200, 200, 200, 200, 429, 429, 429])
    const limited = mine.find(({ status }) => status === 429)
    expect(Number(limited?.headers.get('retry-after'))).toBeGreaterThan(0)
    expect(await limited?.json()).toMatchObject({ status: 429, type: '/api#too-many' })
    const guesses: number[] = []
    for (let i = 0; i < 35; i++) guesses.push((await get('Bearer guess')).status)
    expect(guesses.slice(0, 30)).toEqual(Array(30).fill(401))
    expect(guesses.slice(30)).toEqual(Array(5).fill(429))
  })
})
