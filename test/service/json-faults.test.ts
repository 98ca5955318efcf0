import { describe, expect, it } from 'vitest'
import { JsonError, readJson } from '../../service/src/json/read-json'

function faultsOf(text: string) {
  const before = process.cpuUsage()
  try {
    readJson(text)
  } catch (error) {
    if (!(error instanceof JsonError)) throw error
    const { user, system } = process.cpuUsage(before)
    return { problems: error.problems, seconds: (user + system) / 1e6 }
  }
  throw new Error('the text was taken')
}

describe('a JSON text that is refused', () => {
  it('for 40,000 repeated keys is told the first hundred, and in a moment (58 s when each was placed anew)', () => {
    const text = `{${'"a":1,\n'.repeat(40_000)}"a":1}`
    const { problems, seconds } = faultsOf(text)
    expect(problems.length).toBe(101)
    expect(problems[0]).toEqual({ path: 'a', message: 'line 2, column 1: the field appears twice' })
    expect(problems.at(-1)?.message).toBe('and 39900 more fields that appear twice')
    expect(seconds).toBeLessThan(2)
  })

  it('for repeated keys in 40,000 objects, likewise', () => {
    const { problems, seconds } = faultsOf(`[${'{"a":1,"a":2},\n'.repeat(40_000)}{}]`)
    expect(problems[1]).toEqual({ path: '[1].a', message: 'line 2, column 8: the field appears twice' })
    expect(seconds).toBeLessThan(2)
  })

  it.each([
    [
      'behind more closing brackets than there are opening ones',
      `${']'.repeat(20_000)}${'['.repeat(12_000)}`,
    ],
    ['behind a string that a line break ends', `["\n${'['.repeat(12_000)}`],
    ['behind a quotation mark in a comment', `/* " */${'['.repeat(12_000)}`],
    ['with brackets that the wrong kind closes', '[}'.repeat(12_000)],
    ['of objects', '{"a":'.repeat(12_000)],
  ])('is not followed into its depth %s', (_what, text) => {
    expect(faultsOf(text).problems).toEqual([
      { path: '', message: 'the JSON is nested more than 64 levels deep' },
    ])
  })
})
