// Bundles the command line and its worker threads into service/dist/bundle: a few files instead of some seven hundred
// modules, so that a command starts at once. Packages that load native or optional parts of their own stay outside.
import { fileURLToPath } from 'node:url'
import { build } from 'vite'
import { sourceAliases } from '../shared-calc/source-aliases.mjs'
import { OUTSIDE } from './outside.mjs'

/** exceljs loads its streaming reader and writer with everything else: half of its time to load, for what nothing here uses. */
const withoutStreams = {
  name: 'exceljs-without-streams',
  enforce: 'pre',
  resolveId: (id, importer) =>
    /\/exceljs\//.test(importer ?? '') && /\/stream\/xlsx\/workbook-(?:reader|writer)$/.test(id)
      ? '\0exceljs-streams'
      : undefined,
  load: (id) => (id === '\0exceljs-streams' ? 'module.exports = undefined' : undefined),
}

const at = (relative) => fileURLToPath(new URL(relative, import.meta.url))

await build({
  configFile: false,
  logLevel: 'warn',
  plugins: [withoutStreams],
  resolve: { alias: sourceAliases, conditions: ['node', 'import'] },
  ssr: { noExternal: true, external: OUTSIDE },
  build: {
    ssr: true,
    outDir: at('dist/bundle'),
    emptyOutDir: true,
    target: 'node20',
    minify: false,
    rolldownOptions: {
      // Optional packages that their users try for and do without.
      external: ['@aws-sdk/client-s3'],
      input: {
        main: at('src/cli/main.ts'),
        worker: at('src/jobs/worker.ts'),
        'evaluator-thread': at('src/jobs/evaluator-thread.ts'),
        'watchdog-thread': at('src/running/watchdog-thread.ts'),
        'thread-entry': at('src/archive/thread-entry.ts'),
      },
      output: { entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js', hashCharacters: 'hex' },
    },
  },
})
