#!/usr/bin/env node
// Runs one of the TypeScript scripts beside it: `icons`, or `manifests <https address> [--out FOLDER]`.
import { fileURLToPath } from 'node:url'
import { runnerImport } from 'vite'

const here = (path) => fileURLToPath(new URL(path, import.meta.url))
const publicFolder = here('../addin/public')
const [task, ...rest] = process.argv.slice(2)

try {
  if (task === 'icons') {
    const { module } = await runnerImport(here('src/draw-icons.ts'))
    console.log(module.drawIcons(publicFolder).join('\n'))
  } else if (task === 'manifests' && rest[0]) {
    const out = rest[1] === '--out' && rest[2] ? rest[2] : here('dist')
    const { module } = await runnerImport(here('src/write-manifests.ts'))
    for (const file of module.writeManifests(rest[0], out, publicFolder)) console.log(`${out}/${file}`)
  } else {
    console.error('usage: node manifests/run.mjs icons | manifests https://pane.example/ [--out FOLDER]')
    process.exitCode = 2
  }
} catch (error) {
  console.error(error instanceof Error ? error.message : String(error))
  process.exitCode = 2
}
