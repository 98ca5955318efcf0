import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { definition } from '../../manifests/src/definition'

const at = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url))

describe('the requirement sets', () => {
  it('that the pane asks for, or the manifest demands, are listed with what is done without them', () => {
    const folder = at('addin/src')
    const sources = readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.tsx?$/.test(name))
      .map((name) => readFileSync(join(folder, name), 'utf8'))
    const asked = sources.flatMap((text) =>
      [...text.matchAll(/supported\('(\w+)', '([\d.]+)'\)/g)].map(([, set, version]) => `${set} ${version}`),
    )
    const { name, version } = definition.requirement
    const all = new Set([`${name} ${version}`, ...asked])
    expect(all.size).toBeGreaterThan(1)
    const guide = readFileSync(at('manifests/README.md'), 'utf8')
    for (const set of all)
      expect(guide).toMatch(new RegExp(`^\\| ${set.replace('.', '\\.')} \\| .+ \\| .+ \\|$`, 'm'))
  })
})
