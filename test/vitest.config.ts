import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'

const path = (relative: string) => fileURLToPath(new URL(relative, import.meta.url))

export default defineConfig({
  root: path('..'),
  resolve: {
    alias: [
      {
        find: /^@draughtbook\/shared-calc\/(\w+)$/,
        replacement: `${path('../shared-calc/src')}/$1/index.ts`,
      },
      {
        find: /^@draughtbook\/shared-calc$/,
        replacement: path('../shared-calc/src/index.ts'),
      },
    ],
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
