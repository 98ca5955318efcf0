// Packs the built service into one tarball that installs and runs by itself: the bundle with the calculation inside, the pane, and
// how to run it. Prints the tarball's path. Run after `npm run build`; the folder to put it in may be named.
import { execFileSync } from 'node:child_process'
import { cpSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { OUTSIDE } from './outside.mjs'

const at = (relative) => fileURLToPath(new URL(relative, import.meta.url))
const target = resolve(process.argv[2] ?? at('../test/output/pack'))
const parts = {
  bin: at('bin'),
  'dist/bundle': at('dist/bundle'),
  pane: at('../addin/dist'),
  'README.md': at('deploy/README.md'),
  // The guide links to them.
  'draughtbook.service': at('deploy/draughtbook.service'),
  'service.env': at('deploy/service.env'),
  LICENSE: at('../LICENSE'),
}

const missing = Object.values(parts).filter((path) => !existsSync(path))
if (missing.length > 0) {
  console.error(`${missing.join(', ')}: not built yet; run "npm run build"`)
  process.exit(2)
}

const staged = join(target, 'package')
rmSync(staged, { recursive: true, force: true })
mkdirSync(staged, { recursive: true })
for (const [name, path] of Object.entries(parts)) cpSync(path, join(staged, name), { recursive: true })

const own = JSON.parse(readFileSync(at('package.json'), 'utf8'))
const { engines } = JSON.parse(readFileSync(at('../package.json'), 'utf8'))
const dependencies = Object.fromEntries(OUTSIDE.map((name) => [name, own.dependencies[name]]))
const described = {
  name: 'draughtbook-service',
  version: own.version,
  description: 'Airtightness test evaluation: service, command line and pane',
  license: own.license,
  type: own.type,
  engines,
  bin: own.bin,
  files: Object.keys(parts),
  dependencies,
}
writeFileSync(join(staged, 'package.json'), `${JSON.stringify(described, null, 2)}\n`)

const [packed] = JSON.parse(
  execFileSync('npm', ['pack', '--json', '--pack-destination', target], { cwd: staged, encoding: 'utf8' }),
)
rmSync(staged, { recursive: true })
console.log(join(target, packed.filename))
