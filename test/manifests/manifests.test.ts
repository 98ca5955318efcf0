import { mkdtempSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { functionTable, NAMESPACE } from '../../addin/src/functions/table.js'
import { checkUnified } from '../../manifests/src/check-unified.js'
import { checkXml } from '../../manifests/src/check-xml.js'
import { baseAddress, definition } from '../../manifests/src/definition.js'
import { unifiedManifest } from '../../manifests/src/unified.js'
import { writeManifests } from '../../manifests/src/write-manifests.js'
import { xmlManifest } from '../../manifests/src/xml.js'

const base = baseAddress('https://pane.example/draughtbook')
const xml = xmlManifest(base)
const publicFolder = fileURLToPath(new URL('../../addin/public', import.meta.url))

describe('XML manifest', () => {
  it('passes its own checks', () => {
    expect(checkXml(xml)).toEqual([])
  })

  it('takes every address from the one base address', () => {
    const addresses = [...xml.matchAll(/DefaultValue="(https:[^"]+)"/g)].map(([, address]) => address)
    expect(addresses.length).toBeGreaterThan(12)
    for (const address of addresses) expect(address).toMatch(/^https:\/\/pane\.example\/draughtbook\//)
  })

  it('survives a base address that needs escaping', () => {
    expect(checkXml(xmlManifest(baseAddress('https://pane.example/a&b')))).toEqual([])
  })

  // What breaks in practice, each made by one change to a sound manifest.
  it.each([
    [
      'a dangling resource id',
      'resid="Button.Tip"',
      'resid="Button.Tipp"',
      'resid Button.Tipp stands for no resource',
    ],
    [
      'an unused resource',
      '<Label resid="Group.Label"/>',
      '<Label resid="Button.Label"/>',
      'resource Group.Label is used nowhere',
    ],
    [
      'an http address',
      'DefaultValue="https://pane.example/draughtbook/pane.html"/>\n  </DefaultSettings>',
      'DefaultValue="http://pane.example/pane.html"/>\n  </DefaultSettings>',
      'has an http address',
    ],
    ['a missing icon size', '<bt:Image size="80" resid="Icon.80"/>', '', 'an icon lacks size 80'],
    [
      'a missing namespace',
      '<Namespace resid="Functions.Namespace"/>',
      '',
      'the functions have no Namespace',
    ],
    ['a lower requirement set', 'MinVersion="1.9"', 'MinVersion="1.4"', 'ExcelApi 1.9 is needed'],
    ['a runtime that ends with the pane', 'lifetime="long"', 'lifetime="short"', 'lifetime "long"'],
    [
      'a runtime of another page',
      '<Runtime resid="Pane.Url"',
      '<Runtime resid="Functions.Script.Url"',
      'differ',
    ],
    [
      'a three-part version',
      `<Version>${definition.version}.0</Version>`,
      `<Version>${definition.version}</Version>`,
      'four parts',
    ],
    [
      'elements out of order',
      '  <Permissions>ReadWriteDocument</Permissions>\n',
      '',
      'Permissions is missing',
    ],
    ['broken XML', '</Hosts>', '</Host>', 'not well-formed'],
  ])('names %s', (_fault, sound, broken, words) => {
    expect(xml).toContain(sound)
    expect(checkXml(xml.replaceAll(sound, broken)).join('\n')).toContain(words)
  })
})

describe('unified manifest', () => {
  it("fits Microsoft's own schema", () => {
    expect(checkUnified(unifiedManifest(base))).toEqual([])
  })

  it('is judged by that schema, not waved through', () => {
    expect(checkUnified({ ...unifiedManifest(base), accentColor: 'teal' }).join()).toContain('/accentColor')
    expect(checkUnified({ ...unifiedManifest(base), id: 'draughtbook' }).join()).toContain('/id')
  })

  it('names the same add-in, functions and namespace as the XML manifest', () => {
    const text = JSON.stringify(unifiedManifest(base))
    expect(text).toContain(definition.id)
    expect(text).toContain(`"name":"${NAMESPACE}"`)
    for (const { id } of functionTable) expect(text).toContain(`"id":"${id}"`)
    expect(xml).toContain(`DefaultValue="${NAMESPACE}"`)
  })
})

describe('generator', () => {
  it('writes both manifests with the icons they name, all present in the pane', () => {
    const out = mkdtempSync(join(tmpdir(), 'manifests-'))
    const files = writeManifests('https://pane.example/', out, publicFolder)
    expect(files).toEqual([
      'draughtbook.xml',
      'unified/manifest.json',
      'unified/color.png',
      'unified/outline.png',
    ])
    const written = readFileSync(join(out, 'draughtbook.xml'), 'utf8')
    const icons = [
      ...new Set(
        [...written.matchAll(/https:\/\/pane\.example\/(icons\/[^"]+)/g)].map(([, icon = '']) => icon),
      ),
    ]
    expect(icons).toHaveLength(8)
    for (const icon of icons)
      expect(readFileSync(join(publicFolder, icon)).subarray(1, 4).toString()).toBe('PNG')
  })

  it.each(['http://pane.example/', 'pane.example', 'https://pane.example/?x=1'])(
    'refuses the address %s',
    (address) => {
      expect(() => baseAddress(address)).toThrow(RangeError)
    },
  )
})
