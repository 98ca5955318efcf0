import { describe, expect, it } from 'vitest'
import { answersTo } from './support/bare-connection'

const asked = (more = '') => `GET /healthz HTTP/1.1\r\nhost: localhost\r\n${more}\r\n`

const inPieces = (pieces: string) =>
  `POST /v1/plans HTTP/1.1\r\nhost: localhost\r\nconnection: close\r\ncontent-type: application/json\r\ntransfer-encoding: chunked\r\n\r\n${pieces}2\r\n{}\r\n0\r\n\r\n`

describe('a body in pieces', () => {
  it.each([
    ['some thousand of one byte', '1\r\n \r\n'.repeat(4000)],
    ['many of a line each', `14\r\n${' '.repeat(20)}\r\n`.repeat(20_000)],
  ])('is read: %s', async (_name, pieces) => {
    expect(await answersTo(inPieces(pieces))).toEqual(['422'])
  })

  it('is refused when there are very many of one byte: taking each over costs more than it holds', async () => {
    expect(await answersTo(inPieces('1\r\n \r\n'.repeat(50_000)))).toEqual(['400'])
  })
})

describe('requests sent ahead of the answers to earlier ones', () => {
  it('are answered while they are few', async () => {
    expect(await answersTo(asked().repeat(9) + asked('connection: close\r\n'))).toEqual(Array(10).fill('200'))
  })

  it('end the connection when they are many: those in one piece would hold the event loop together', async () => {
    const statuses = await answersTo(asked().repeat(1500))
    expect(statuses.length).toBeLessThan(20)
  })

  it.each([
    [
      'a body of unknown end',
      'POST /v1/plans HTTP/1.1\r\nhost: localhost\r\ncontent-type: application/json\r\ntransfer-encoding: xchunked\r\n\r\n',
      ['400'],
    ],
    [
      'a length with a sign',
      'POST /v1/plans HTTP/1.1\r\nhost: localhost\r\ncontent-length: +4\r\n\r\nnull',
      ['400'],
    ],
    [
      'both kinds of length, with a request hidden in the body',
      `POST /v1/plans HTTP/1.1\r\nhost: localhost\r\ncontent-length: 4\r\ntransfer-encoding: chunked\r\n\r\n0\r\n\r\n${asked()}`,
      ['400'],
    ],
    ['a blank before the colon', 'GET /healthz HTTP/1.1\r\nhost: localhost\r\nx-a : b\r\n\r\n', ['400']],
    ['a header over two lines', 'GET /healthz HTTP/1.1\r\nhost: localhost\r\nx-a: b\r\n c\r\n\r\n', ['400']],
  ])('%s is refused and nothing behind it answered', async (_name, text, statuses) => {
    expect(await answersTo(text)).toEqual(statuses)
  })
})
