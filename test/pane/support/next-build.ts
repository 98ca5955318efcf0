import { readdir, readFile, rename, rm, writeFile } from 'node:fs/promises'
import { join } from 'node:path'

const HASHED = /([\w.-]+-[\w-]{7})([\w-])(\.(?:js|css|ttf|icc))/g

/** Puts the next build in the place of a pane's files: every asset has another name, and none of the old ones is there any more. */
export async function putNextBuild(folder: string, title: string): Promise<void> {
  const assets = join(folder, 'assets')
  for (const name of await readdir(assets)) if (/\.(br|gz)$/.test(name)) await rm(join(assets, name))
  const names = new Set(await readdir(assets))
  const renamed = (text: string): string =>
    text.replace(HASHED, (name: string, start: string, last: string, ending: string) =>
      names.has(name) ? `${start}${last === '0' ? '1' : '0'}${ending}` : name,
    )
  const texts = ['index.html', 'service-worker.js', ...[...names].map((name) => join('assets', name))]
  for (const path of texts.filter((name) => /\.(html|js|css)$/.test(name))) {
    const text = renamed(await readFile(join(folder, path), 'utf8'))
    await writeFile(
      join(folder, path),
      path === 'index.html'
        ? text.replace(/<title>[^<]*/, `<title>${title}`)
        : path === 'service-worker.js'
          ? text.replace(/("?url"?:"index\.html","?revision"?:")\w+/, '$1next')
          : text,
    )
  }
  for (const name of names) await rename(join(assets, name), join(assets, renamed(name)))
}
