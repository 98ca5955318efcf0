import { copyFileSync, mkdirSync, renameSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { checkUnified } from './check-unified.js'
import { checkXml } from './check-xml.js'
import { baseAddress, iconFile } from './definition.js'
import { unifiedManifest } from './unified.js'
import { xmlManifest } from './xml.js'

/**
 * Writes draughtbook.xml and, in a folder of its own with its two icons, the unified manifest.json.
 * @param address where the pane is served, https only
 * @throws RangeError for an unusable address; Error when a manifest fails its own checks
 */
export function writeManifests(address: string, out: string, publicFolder: string): string[] {
  const base = baseAddress(address)
  const xml = xmlManifest(base)
  const unified = unifiedManifest(base)
  const faults = [...checkXml(xml), ...checkUnified(unified)]
  if (faults.length > 0) throw new Error(`the manifests are unsound:\n${faults.join('\n')}`)
  const folder = join(out, 'unified')
  mkdirSync(folder, { recursive: true })
  write(join(out, 'draughtbook.xml'), xml)
  write(join(folder, 'manifest.json'), `${JSON.stringify(unified, undefined, 2)}\n`)
  copyFileSync(join(publicFolder, iconFile(192)), join(folder, 'color.png'))
  copyFileSync(join(publicFolder, 'icons/draughtbook-outline-32.png'), join(folder, 'outline.png'))
  return ['draughtbook.xml', 'unified/manifest.json', 'unified/color.png', 'unified/outline.png']
}

function write(path: string, text: string): void {
  writeFileSync(`${path}.part`, text)
  renameSync(`${path}.part`, path)
}
