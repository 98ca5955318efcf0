import { readdir, readFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { InputError, type Problem } from '@draughtbook/shared-calc'
import { builtInLayouts, type Layout, parseLayout } from '@draughtbook/shared-calc/log'
import { readJson } from '../json/read-json.js'

/** Names the folder a firm keeps its devices, layouts and targets in. */
export const LIBRARY_VARIABLE = 'DRAUGHTBOOK_LIBRARY'

/** Reads one layout file. @throws InputError whose messages name the file */
export async function readLayout(path: string): Promise<Layout> {
  try {
    return parseLayout(readJson(await readFile(path, 'utf8')))
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    throw new InputError(
      error.problems.map((one): Problem => ({ ...one, message: `${path}: ${one.message}` })),
    )
  }
}

/**
 * Layouts a log may fit: those beside it (`*.layout.json`), those of the firm's library, those that come with the tool.
 * Where one of the first carries the name of a later one, it stands in its place.
 */
export async function layoutsFor(log: string): Promise<Layout[]> {
  const library = process.env[LIBRARY_VARIABLE]
  const beside = await inFolder(dirname(log), '.layout.json')
  const own = library ? await inFolder(join(library, 'layouts'), '.json') : []
  const layouts = new Map<string, Layout>()
  for (const layout of [...beside, ...own, ...builtInLayouts])
    if (!layouts.has(layout.name)) layouts.set(layout.name, layout)
  return [...layouts.values()]
}

async function inFolder(folder: string, ending: string): Promise<Layout[]> {
  const names = await readdir(folder).catch(() => [])
  const files = names.filter((name) => name.endsWith(ending)).sort()
  return Promise.all(files.map((name) => readLayout(join(folder, name))))
}
