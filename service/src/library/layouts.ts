import { readdir } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { InputError, type Problem } from '@draughtbook/shared-calc'
import { builtInLayouts, type Layout, parseLayout } from '@draughtbook/shared-calc/log'
import { fileFault } from '../files/file-fault.js'
import { NotReadable, readRegular } from '../files/read-regular.js'
import { readJson } from '../json/read-json.js'
import { ENTRY_BYTES } from './read-entry.js'

/** Names the folder a firm keeps its devices, layouts and targets in. */
export const LIBRARY_VARIABLE = 'DRAUGHTBOOK_LIBRARY'

/** Reads one layout file. @throws InputError with its faults, or the system's error */
export const parseLayoutFile = async (path: string): Promise<Layout> =>
  parseLayout(readJson(new TextDecoder('utf-8').decode(await readRegular(path, ENTRY_BYTES))))

/** The same. @throws InputError whose messages name the file, or the system's error */
export async function readLayout(path: string): Promise<Layout> {
  try {
    return await parseLayoutFile(path)
  } catch (error) {
    if (error instanceof NotReadable)
      throw new InputError([{ path: '', message: `${path}: ${error.message}` }])
    if (!(error instanceof InputError)) throw error
    throw new InputError(
      error.problems.map((one): Problem => ({ ...one, message: `${path}: ${one.message}` })),
    )
  }
}

/**
 * Layouts a log may fit: those beside it (`*.layout.json`), those of the firm's library, those that come with the tool.
 * Where one of the first carries the name of a later one, it replaces that one.
 */
export async function layoutsFor(log: string): Promise<Layout[]> {
  const { layouts, faults } = await layoutsBeside(log)
  if (faults.length > 0) throw new InputError(faults)
  return layouts
}

/** The same with what is wrong, for an archive: one layout that is broken is not a reason to read none of its files. */
export async function layoutsBeside(log: string): Promise<{ layouts: Layout[]; faults: Problem[] }> {
  const library = process.env[LIBRARY_VARIABLE]
  const beside = await inFolder(dirname(log), '.layout.json')
  const own = library ? await inFolder(join(library, 'layouts'), '.json') : []
  const layouts = new Map<string, Layout>()
  const faults: Problem[] = []
  for (const found of [...beside, ...own, ...builtInLayouts]) {
    if (Array.isArray(found)) faults.push(...found)
    else if (!layouts.has(found.name)) layouts.set(found.name, found)
  }
  return { layouts: [...layouts.values()], faults }
}

async function inFolder(folder: string, ending: string): Promise<(Layout | Problem[])[]> {
  const names = await readdir(folder).catch(() => [])
  const files = names.filter((name) => name.endsWith(ending)).sort()
  return Promise.all(
    files.map((name) =>
      readLayout(join(folder, name)).catch((error: unknown): Problem[] => {
        if (error instanceof InputError) return [...error.problems]
        const fault = fileFault(error)
        if (fault === undefined) throw error
        return [{ path: '', message: `${join(folder, name)}: ${fault}` }]
      }),
    ),
  )
}
