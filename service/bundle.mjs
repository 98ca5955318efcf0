// Bundles the command line and its worker threads into service/dist/bundle: a few files instead of some seven hundred
// modules, so that a command starts at once. Packages that load native or optional parts of their own stay outside.
import { fileURLToPath } from 'node:url'
import { build } from 'vite'
import { sourceAliases } from '../shared-calc/source-aliases.mjs'
import { OUTSIDE } from './outside.mjs'

const at = (relative) => fileURLToPath(new URL(relative, import.meta.url))

await build({
  configFile: false,
  logLevel: 'warn',
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
        'watchdog-thread': at('src/running/watchdog-thread.ts'),
        'thread-entry': at('src/archive/thread-entry.ts'),
      },
      output: { entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js', hashCharacters: 'hex' },
    },
  },
})
