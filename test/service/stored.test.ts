import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { createApp } from '../../service/src/app'
import { stored } from '../../service/src/pages/stored'
import { makeToken } from '../../service/src/security/tokens/token'
import { readTokens, writeTokens } from '../../service/src/security/tokens/token-file'
import { readUse, TokenUse } from '../../service/src/security/tokens/token-use'
import { commandLine, folder } from './support/command-line'
import { listen } from './support/listen'

describe('what is stored', () => {
  it('is said on one page of the service, for everybody, and in the same words where it is told how to run it', async () => {
    const base = await listen(createApp())
    const answer = await fetch(`${base}/stored`)
    expect(answer.status).toBe(200)
    const html = await answer.text()
    const readme = await readFile('service/deploy/README.md', 'utf8')
    for (const { what, where, until } of stored) {
      expect(readme).toContain(`| ${what} | ${where} | ${until} |`)
      for (const text of [what, where, until]) expect(html.replaceAll('&quot;', '"')).toContain(text)
    }
  })

  it('of a token can be removed altogether', async () => {
    const file = join(await folder(), 'tokens.json')
    const [one, other] = [makeToken('one', 1, ['evaluate']), makeToken('other', 1, ['evaluate'])]
    await writeTokens(file, [one.stored, other.stored])
    const uses = new TokenUse(file, 20)
    const used = async () => Object.keys(await readUse(file))
    for (const [i, { stored }] of [one, other].entries()) {
      uses.note(stored.id)
      // The second is used just after the file was written, and not again.
      await expect.poll(used).toHaveLength(i + 1)
    }
    expect((await commandLine('token', 'remove', one.stored.id, '--tokens', file)).code).toBe(0)
    expect((await readTokens(file)).map(({ name }) => name)).toEqual(['other'])
    expect(await used()).toEqual([other.stored.id])
    expect((await commandLine('token', 'remove', one.stored.id, '--tokens', file)).code).toBe(2)
  })
})
