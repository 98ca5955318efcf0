import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'
import { sourceAliases } from '../shared-calc/source-aliases.mjs'
import { COMPILED, compiledSources } from './tools/compiled-sources.mjs'

const path = (relative: string) => fileURLToPath(new URL(relative, import.meta.url))

/**
 * Tests that drive Chromium: on a busy machine the browser itself now and then gives up. Such a test is run once more,
 * and the closing lines name it. All others must pass the first time. Each file has a browser and a service of its own.
 */
const BROWSER = [
  'test/pane/**/*.test.ts',
  'test/register/month-view.test.ts',
  'test/site/house-page.test.ts',
  'test/uncertainty/pane.test.ts',
]

/**
 * Tests that only calculate: they replace no module, change no setting and keep nothing, so their files share a process and load
 * the calculation once instead of once per file.
 */
const CALCULATING = [
  'addin',
  'manifests',
  'published',
  'methods',
  'shared-calc',
  'uncertainty',
  'property',
  'site',
  'workbook',
  'truth',
  'log',
  'recalculation',
  'register',
  'rerun',
].map((folder) => `test/${folder}/**/*.test.{ts,tsx}`)

/**
 * Tests of the service that measure the process they run in (its event loop, its memory, what it leaves behind), or that end
 * threads: each file needs a process of its own. All other tests of the service start one and stop it, and share a process.
 */
const MEASURING = [
  'called-off',
  'evaluator',
  'event-loop',
  'faults',
  'fuzz',
  'fuzz-doors',
  'json-faults',
  'left-behind',
  'near-largest',
  'overload',
  'pool',
  'stop',
  'uploads',
  'watchdog',
].map((name) => `test/service/${name}.test.ts`)
const SERVING = ['test/service/**/*.test.ts']

/**
 * Room for what is made and dropped at once: reading workbooks back makes so much of it that clearing it away often takes a quarter of
 * the time. Not where a process is measured.
 */
const execArgv = ['--max-semi-space-size=64']

/** `npm run verify` has just compiled the sources, so its tests use that; while working, tests read the sources themselves. */
const useCompiled = process.env.TEST_COMPILED === '1'

export default defineConfig({
  root: path('..'),
  plugins: useCompiled ? [compiledSources] : [],
  resolve: {
    alias: sourceAliases,
  },
  test: {
    projects: [
      {
        extends: true,
        // The limits are for what never comes, and leave room on a machine that is busy with other work.
        test: {
          name: 'browser',
          include: BROWSER,
          retry: 1,
          isolate: false,
          testTimeout: 400_000,
          hookTimeout: 400_000,
        },
      },
      {
        extends: true,
        test: { name: 'calculating', include: CALCULATING, exclude: BROWSER, isolate: false, execArgv },
      },
      {
        extends: true,
        test: { name: 'serving', include: SERVING, exclude: MEASURING, isolate: false },
      },
      {
        extends: true,
        test: { name: 'measuring', include: MEASURING },
      },
      {
        extends: true,
        test: {
          name: 'rest',
          execArgv,
          include: ['test/**/*.test.{ts,tsx}'],
          exclude: ['test/output/**', ...CALCULATING, ...BROWSER, ...SERVING],
        },
      },
    ],
    server: { deps: { external: useCompiled ? [COMPILED] : [] } },
    setupFiles: [path('support/setup.ts')],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
    reporters: ['default', path('tools/summary-reporter.ts')],
  },
})
