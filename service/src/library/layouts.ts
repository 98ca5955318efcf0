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

/** Something wrong with a file that should hold a layout. */
export interface LayoutFault {
  readonly file: string
  readonly problem: Problem
}

/** What is wrong with a layout file; undefined where the error tells nothing about it. */
function faultsIn(file: string, error: unknown): LayoutFault[] | undefined {
  if (error instanceof NotReadable) return [{ file, problem: { path: '', message: error.message } }]
  if (!(error instanceof InputError)) return undefined
  return error.problems.map((problem) => ({ file, problem }))
}

const namingFiles = (faults: readonly LayoutFault[]): InputError =>
  new InputError(faults.map(({ file, problem }) => ({ ...problem, message: `${file}: ${problem.message}` })))

/** The same. @throws InputError whose messages name the file, or the system's error */
export async function readLayout(path: string): Promise<Layout> {
  try {
    return await parseLayoutFile(path)
  } catch (error) {
    const faults = faultsIn(path, error)
    throw faults ? namingFiles(faults) : error
  }
}

/**
 * Layouts a log may fit: those beside it (`*.layout.json`), those of the firm's library, those that come with the tool.
 * Where one of the first carries the name of a later one, it replaces that one.
 */
export async function layoutsFor(log: string): Promise<Layout[]> {
  const { layouts, faults } = await layoutsBeside(log)
  if (faults.length > 0) throw namingFiles(faults)
  return layouts
}

/** The same with what is wrong, for an archive: one layout that is broken is not a reason to read none of its files. */
export async function layoutsBeside(log: string): Promise<{ layouts: Layout[]; faults: LayoutFault[] }> {
  const library = process.env[LIBRARY_VARIABLE]
  const beside = await inFolder(dirname(log), '.layout.json')
  const own = library ? await inFolder(join(library, 'layouts'), '.json') : []
  const layouts = new Map<string, Layout>()
  const faults: LayoutFault[] = []
  for (const found of [...beside, ...own, ...builtInLayouts]) {
    if (Array.isArray(found)) faults.push(...found)
    else if (!layouts.has(found.name)) layouts.set(found.name, found)
  }
  return { layouts: [...layouts.values()], faults }
}

async function inFolder(folder: string, ending: string): Promise<(Layout | LayoutFault[])[]> {
  const names = await readdir(folder).catch(() => [])
  const files = names.filter((name) => name.endsWith(ending)).sort()
  return Promise.all(
    files.map((name) => {
      const file = join(folder, name)
      return parseLayoutFile(file).catch((error: unknown): LayoutFault[] => {
        const known = faultsIn(file, error)
        if (known) return known
        const message = fileFault(error)
        if (message === undefined) throw error
        return [{ file, problem: { path: '', message } }]
      })
    }),
  )
}
