import { createHash } from 'node:crypto'
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterWriting } from './after-writing.ts'

const WORKER = 'service-worker.js'
/** Pages and files of the add-in in Excel, which is never without a network, and the worker itself. */
const LEFT_OUT = /^(pane\.html|manifest\.xml|functions\.(js|json)|office-js\/.*|service-worker\.js|.*\.map)$/

/** Their names change with what they hold: what the page has fetched of them itself is not fetched again. */
const NAMED_BY_CONTENT = /^assets\/.*-[\w-]{8}\.\w+$/

const digest = (out: string, file: string): string =>
  createHash('sha256')
    .update(readFileSync(join(out, file)))
    .digest('hex')
    .slice(0, 16)

/** Writes the list of files to keep, each with a digest of its content, into the service worker. */
export const precacheList = () =>
  afterWriting('precache-list', (out) => {
    const files = readdirSync(out, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map(({ parentPath, name }) =>
        join(parentPath, name)
          .slice(out.length + 1)
          .replaceAll('\\', '/'),
      )
      .filter((file) => !LEFT_OUT.test(file))
      .sort()
    const list = files.map((url) => ({ url, revision: NAMED_BY_CONTENT.test(url) ? null : digest(out, url) }))
    const path = join(out, WORKER)
    const code = readFileSync(path, 'utf8')
    if (!code.includes('self.__WB_MANIFEST')) throw new Error(`${WORKER} has no place for the list of files`)
    writeFileSync(
      path,
      code.replace('self.__WB_MANIFEST', () => JSON.stringify(list)),
    )
  })
