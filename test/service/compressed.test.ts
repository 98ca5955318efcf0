import { readdirSync, readFileSync } from 'node:fs'
import { request } from 'node:http'
import { join } from 'node:path'
import { brotliDecompressSync, gunzipSync } from 'node:zlib'
import { beforeAll, describe, expect, it } from 'vitest'
import { createApp } from '../../service/src/app'
import { PANE } from '../../service/src/running/pane-folder'
import { requireBuild } from './support/built'
import { listen } from './support/listen'

interface Answer {
  readonly encoding: string | undefined
  readonly type: string | undefined
  readonly cache: string | undefined
  readonly body: Buffer
}

beforeAll(requireBuild)

/** An asset as it is sent, still compressed. */
const fetched = async (path: string, accept?: string): Promise<Answer> => {
  const base = await listen(createApp())
  return new Promise((resolve, reject) => {
    const headers = accept === undefined ? {} : { 'accept-encoding': accept }
    request(new URL(path, base), { headers }, (response) => {
      const parts: Buffer[] = []
      response.on('data', (part: Buffer) => parts.push(part))
      response.on('end', () => {
        const {
          'content-encoding': encoding,
          'content-type': type,
          'cache-control': cache,
        } = response.headers
        resolve({ encoding, type, cache, body: Buffer.concat(parts) })
      })
    })
      .on('error', reject)
      .end()
  })
}

describe('the files of the pane', () => {
  const assets = join(PANE, 'assets')
  const script = readdirSync(assets).find((name) => /^main-.*\.js$/.test(name)) ?? ''
  const plain = () => readFileSync(join(assets, script))

  it.each([
    ['gzip, deflate, br', 'br', brotliDecompressSync],
    ['gzip', 'gzip', gunzipSync],
  ] as const)('are sent compressed to a browser that takes %s', async (accept, encoding, unpacked) => {
    const answer = await fetched(`/assets/${script}`, accept)
    expect(answer).toMatchObject({ encoding, cache: 'public, max-age=31536000, immutable' })
    expect(answer.type).toMatch(/^text\/javascript/)
    expect(answer.body.length).toBeLessThan(plain().length / 2)
    expect(unpacked(answer.body).equals(plain())).toBe(true)
  })

  it('are sent as they are to others', async () => {
    const answer = await fetched(`/assets/${script}`)
    expect(answer.encoding).toBeUndefined()
    expect(answer.body.equals(plain())).toBe(true)
  })
})
