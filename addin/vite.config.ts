import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vite'
import { sourceAliases } from '../shared-calc/source-aliases.mjs'
import { compressedAssets } from './build/compressed-plugin.ts'
import { functionsMetadata } from './build/functions-metadata-plugin.ts'
import { initialSize } from './build/initial-size-plugin.ts'
import { manifest } from './build/manifest-plugin.ts'
import { officeJs } from './build/office-js-plugin.ts'
import { precacheList } from './build/precache-plugin.ts'

const path = (relative: string) => fileURLToPath(new URL(relative, import.meta.url))

/** Two pages over one bundle: index.html is the plain page, pane.html carries the office.js tag for Excel. */
export default defineConfig({
  root: path('.'),
  base: './',
  publicDir: path('public'),
  resolve: {
    alias: sourceAliases,
  },
  build: {
    outDir: path('dist'),
    emptyOutDir: true,
    target: 'es2022',
    modulePreload: { polyfill: false },
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 1200,
    rolldownOptions: {
      // How long each plugin took concerns nobody who builds.
      checks: { pluginTimings: false },
      input: {
        index: path('index.html'),
        pane: path('pane.html'),
        'service-worker': path('src/service-worker.ts'),
      },
      // A service worker answers for its own folder and below, so it stands beside the page.
      output: {
        // What the page shares with what it loads later, in one file instead of many small ones.
        codeSplitting: {
          groups: [
            {
              name: 'shared',
              test: /node_modules\/preact|preload-helper|record\/choices|catalogue\/(figures|shown-figure|words)\.|one-test\/(entries|lists\.ts|lists\/|typed\/typed-run|taken-stations)|service\/(service-client|service-problem|access-token)|addin\/src\/host\/(address|host|download)\./,
            },
          ],
        },
        entryFileNames: ({ name }) =>
          name === 'service-worker' ? 'service-worker.js' : 'assets/[name]-[hash].js',
      },
    },
  },
  worker: { format: 'es' },
  plugins: [
    officeJs(process.env.DRAUGHTBOOK_OFFICE_JS),
    functionsMetadata(),
    manifest(),
    initialSize(120),
    precacheList(),
    compressedAssets(),
  ],
})
