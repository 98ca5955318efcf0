#!/usr/bin/env node
// The bundle starts several times faster than the compiled modules it is made from. In a checkout these may be newer.
import { statSync } from 'node:fs'

const written = (file) => statSync(new URL(file, import.meta.url), { throwIfNoEntry: false })?.mtimeMs ?? 0
const compiled = Math.max(
  written('../tsconfig.tsbuildinfo'),
  written('../../shared-calc/tsconfig.tsbuildinfo'),
)
const bundled = written('../dist/bundle/main.js')
if (bundled === 0 && compiled === 0) {
  console.error('draughtbook: not built yet; run "npm run build" first')
  process.exit(2)
}
await import(bundled > compiled ? '../dist/bundle/main.js' : '../dist/cli/main.js')
