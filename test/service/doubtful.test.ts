import { describe, expect, it } from 'vitest'
import { answersTo } from './support/bare-connection'
import { demoRecord } from './support/record'

const RECORD = JSON.stringify(demoRecord())
const GOOD = 'GET /healthz HTTP/1.1\r\nhost: localhost\r\nconnection: close\r\n'
const POST =
  'POST /v1/plans HTTP/1.1\r\nhost: localhost\r\nconnection: close\r\ncontent-type: application/json\r\n'

/** Source of the statuses: RFC 9112, 2.3, 3.2, 3.2.2, 6.1; RFC 6585, 5. */
describe('a request that can be understood in two ways', () => {
  it.each([
    ['two hosts', `${GOOD}host: elsewhere.example\r\n\r\n`, '400'],
    ['the same host twice', `${GOOD}HOST: localhost\r\n\r\n`, '400'],
    ['two access tokens', `${GOOD}authorization: Bearer a\r\nAuthorization: Bearer b\r\n\r\n`, '400'],
    [
      'two kinds of content',
      `${POST.replace('plans', 'evaluations')}content-type: text/plain\r\ncontent-length: ${RECORD.length}\r\n\r\n${RECORD}`,
      '400',
    ],
    [
      'another host in its address',
      `${GOOD.replace('/healthz', 'http://elsewhere.example/healthz')}\r\n`,
      '400',
    ],
    ['a version to come', `${GOOD.replace('1.1', '2.0')}\r\n`, '505'],
    [
      'a body packed on the way',
      `${POST}transfer-encoding: gzip, chunked\r\n\r\n2\r\n{}\r\n0\r\n\r\n`,
      '501',
    ],
    [
      'chunks in a version that has none',
      `${POST.replace('1.1', '1.0')}transfer-encoding: chunked\r\n\r\n2\r\n{}\r\n0\r\n\r\n`,
      '400',
    ],
    ['more header lines than anybody sends', `${GOOD}${'a:b\r\n'.repeat(3000)}\r\n`, '431'],
    ['a second host behind many lines', `${GOOD}${'a:b\r\n'.repeat(2500)}host: x\r\n\r\n`, '431'],
  ])('is refused: %s', async (_what, text, status) => {
    expect(await answersTo(`${text}${GOOD}\r\n`)).toEqual([status])
  })

  it.each([
    ['the same host in its address', GOOD.replace('/healthz', 'http://LOCALHOST/healthz')],
    ['an address in its query', GOOD.replace('/healthz', '/healthz?to=http://elsewhere.example/')],
    ['as many header lines as a browser behind proxies sends', `${GOOD}${'a:b\r\n'.repeat(60)}`],
  ])('is not one with %s', async (_what, text) => {
    expect(await answersTo(`${text}\r\n`)).toEqual(['200'])
  })
})
