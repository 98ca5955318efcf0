import { mkdirSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { ICON_SIZES, iconFile } from './definition.js'
import { drawIcon } from './icons/draw.js'
import { encodePng } from './icons/png.js'

/** Draws every icon into the pane's public folder: {@link ICON_SIZES}, and the unified manifest's outline at 32 px. */
export function drawIcons(publicFolder: string): string[] {
  const files = [
    ...ICON_SIZES.map((size) => ({ file: iconFile(size), bytes: encodePng(drawIcon(size), size) })),
    { file: 'icons/draughtbook-outline-32.png', bytes: encodePng(drawIcon(32, true), 32) },
  ]
  for (const { file, bytes } of files) {
    const path = join(publicFolder, file)
    mkdirSync(dirname(path), { recursive: true })
    writeFileSync(path, bytes)
  }
  return files.map(({ file }) => file)
}
