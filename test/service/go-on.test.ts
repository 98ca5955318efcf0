import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { JSON_BYTES } from '../../service/src/http/read-body'
import { writeTokens } from '../../service/src/security/tokens/token-file'
import { answersTo } from './support/bare-connection'
import { folder } from './support/command-line'
import { demoRecord } from './support/record'
import { settings } from './support/settings'

const RECORD = JSON.stringify(demoRecord())

const head = (path: string, length: number, type = 'application/json') =>
  `POST ${path} HTTP/1.1\r\nhost: localhost\r\ncontent-type: ${type}\r\ncontent-length: ${length}\r\nexpect: 100-continue\r\n`

// Source: RFC 9110, 10.1.1.
describe('a sender who waits to be told to go on', () => {
  it('is told to, and answered', async () => {
    const text = `${head('/v1/evaluations', RECORD.length)}connection: close\r\n\r\n${RECORD}`
    expect(await answersTo(text)).toEqual(['100', '200'])
  })

  it('keeps its connection when it was told to', async () => {
    const next = 'GET /healthz HTTP/1.1\r\nhost: localhost\r\nconnection: close\r\n\r\n'
    const text = `${head('/v1/evaluations', RECORD.length)}\r\n${RECORD}${next}`
    expect(await answersTo(text)).toEqual(['100', '200', '200'])
  })

  it.each([
    ['its body would be too large', head('/v1/evaluations', JSON_BYTES + 1), '413'],
    [
      'its archive would be too large',
      head('/v1/registers', 2 ** 31, 'multipart/form-data; boundary=b'),
      '413',
    ],
    ['its body is of another kind', head('/v1/evaluations', 2, 'text/csv'), '415'],
    ['there is nothing at the address', head('/v1/none', 2), '404'],
    ['a path takes nothing', head('/healthz', 2), '405'],
  ])('is refused at once, and its connection ended, where %s', async (_why, text, status) => {
    expect(await answersTo(`${text}\r\n`)).toEqual([status])
  })

  it('is refused at once where it may not call', async () => {
    const tokens = join(await folder(), 'tokens.json')
    await writeTokens(tokens, [])
    expect(await answersTo(`${head('/v1/evaluations', 2)}\r\n`, settings({ tokens }))).toEqual(['401'])
  })
})
