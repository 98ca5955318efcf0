import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'
import { sourceAliases } from '../shared-calc/source-aliases.mjs'

const path = (relative: string) => fileURLToPath(new URL(relative, import.meta.url))

export default defineConfig({
  root: path('..'),
  resolve: {
    alias: sourceAliases,
  },
  test: {
    include: ['test/**/*.test.ts', 'test/**/*.test.tsx'],
    exclude: ['test/output/**'],
    setupFiles: [path('support/setup.ts')],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
    reporters: ['default', path('tools/summary-reporter.ts')],
  },
})
