import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'

const HERE = fileURLToPath(new URL('.', import.meta.url))
const VITEST = fileURLToPath(new URL('../../node_modules/vitest/vitest.mjs', import.meta.url))

let folder: string
beforeEach(() => {
  // Inside the project, so that the made-up test finds vitest; no name the project's own run would pick up.
  folder = mkdtempSync(join(HERE, 'run-'))
})
afterEach(() => rmSync(folder, { recursive: true }))

const closingLine = (tests: string): { last: string | undefined; status: number | null } => {
  const { lines, status } = runOf(tests)
  return { last: lines.at(-1), status }
}

function runOf(tests: string): { lines: string[]; status: number | null } {
  writeFileSync(
    join(folder, 'made-up.check.ts'),
    `import { beforeAll, describe, it } from 'vitest'\n${tests}`,
  )
  const reporters = ['default', join(HERE, 'summary-reporter.ts')]
  const config = { test: { include: ['*.check.ts'], reporters } }
  writeFileSync(join(folder, 'vitest.config.mjs'), `export default ${JSON.stringify(config)}`)
  const env = { PATH: process.env.PATH }
  const { stdout, status } = spawnSync(process.execPath, [VITEST, 'run', '--root', folder], {
    encoding: 'utf8',
    env,
  })
  return { lines: stdout.trimEnd().split('\n'), status }
}

describe('last line of a test run', () => {
  it('counts passed, failed and skipped tests', () => {
    const tests = `it('a', () => {}); it('b', () => {}); it('c', () => { throw new Error('c') }); it.skip('d', () => {})`
    expect(closingLine(tests)).toEqual({ last: '2 passed, 1 failed, 1 skipped', status: 1 })
  })

  it('comes after the time of each folder', () => {
    expect(runOf(`it('a', () => {})`).lines.at(-2)).toMatch(/^ *\d+\.\d s {2}\.$/)
  })

  it('names a test that passed only at the second attempt, before the last line', () => {
    const tests = `let runs = 0
      describe('door', () => {
        it('closes at once', () => {})
        it('closes when pushed twice', { retry: 2 }, () => { runs += 1; if (runs < 2) throw new Error('still open') })
      })`
    expect(runOf(tests).lines.slice(-2)).toEqual([
      'passed at the second attempt: door > closes when pushed twice',
      '2 passed, 0 failed',
    ])
  })

  it('names no test that failed at every attempt, nor one that passed at once', () => {
    const tests = `it('a', { retry: 1 }, () => {}); it('b', { retry: 1 }, () => { throw new Error('b') })`
    expect(runOf(tests).lines.join('\n')).not.toContain('second attempt')
  })

  it('says nothing of skipped tests where there are none', () => {
    expect(closingLine(`it('a', () => {})`)).toEqual({ last: '1 passed, 0 failed', status: 0 })
  })

  it.each([
    ['a file that cannot be loaded', `throw new Error('broken')`, '0 passed, 1 failed'],
    [
      'a group whose set-up fails',
      `describe('g', () => { beforeAll(() => { throw 1 }); it('a', () => {}) })`,
      '0 passed, 1 failed, 1 skipped',
    ],
    [
      'an error nobody caught',
      `it('a', () => { void Promise.reject(new Error('lost')) })`,
      '1 passed, 1 failed',
    ],
  ])('counts as a failure: %s', (_, tests, line) => {
    expect(closingLine(tests)).toEqual({ last: line, status: 1 })
  })
})
