import { readFile } from 'node:fs/promises'
import { describe, expect, it } from 'vitest'

const read = (path: string) => readFile(new URL(`../../${path}`, import.meta.url), 'utf8')

interface Lock {
  packages: Record<string, { version?: string }>
}

describe('the contributor’s guide', () => {
  it('lists old packages that come with others in the versions that are installed', async () => {
    const guide = await read('DEVELOPERS.md')
    const { packages } = JSON.parse(await read('package-lock.json')) as Lock
    const [, table = ''] = guide.split('## Packages we did not choose')
    const rows = [...table.matchAll(/^\| ([\w.-]+) \| ([\d., ]+) \| ([^|]+) \| ([^|]+) \|$/gm)]
    expect(rows.length).toBeGreaterThan(10)
    for (const [, name, versions = ''] of rows) {
      const installed = Object.entries(packages).flatMap(([path, { version }]) =>
        path.endsWith(`node_modules/${name}`) && version ? [version] : [],
      )
      expect(`${name} ${[...new Set(installed)].sort().join(', ')}`).toBe(`${name} ${versions.trim()}`)
    }
  })
})
