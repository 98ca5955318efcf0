import { fileURLToPath } from 'node:url'

const ROOT = fileURLToPath(new URL('../..', import.meta.url))
const SOURCE = /\/(shared-calc|service)\/src\/(.*)\.ts$/

/** Paths of compiled modules, which Node loads by itself. */
export const COMPILED = /\/(shared-calc|service)\/dist\//

/**
 * Leads what tests import from the sources of calculation and service to what `tsc` made of them: as it ships, and quicker, because
 * otherwise each group of test files transforms every module again, and calls between modules go through the test runner.
 */
export const compiledSources = {
  name: 'compiled-sources',
  enforce: 'pre',
  async resolveId(source, importer, options) {
    const found = await this.resolve(source, importer, { ...options, skipSelf: true })
    const [, workspace, path] = SOURCE.exec(found?.id ?? '') ?? []
    return path === undefined ? found : `${ROOT}${workspace}/dist/${path}.js`
  },
}
