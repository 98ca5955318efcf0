import { fileText } from '../../../catalogue/findings/log/file.js'
import { remarkFinding } from '../../../catalogue/findings/remark.js'
import { guardSizes } from '../../container/guard.js'
import { partMemory } from '../../container/part-memory.js'
import { refuseForeignZip } from '../../container/sniff.js'
import { unpackText } from '../../container/unpack.js'
import { type XmlEvents, xmlReader } from '../../container/xml.js'
import { listEntries, type ZipEntry } from '../../container/zip.js'
import { refuse } from '../../problem.js'
import { parseBlock } from '../address.js'
import { CellStore } from '../cell-store.js'
import type { DefinedName, Grid, Sheet } from '../grid.js'
import { colourOf, themeEvents } from './colours.js'
import { commentEvents } from './comments-part.js'
import { type StoredText, stringsEvents } from './rich-text.js'
import { sheetEvents } from './sheet-part.js'
import type { CellStyle, SheetContext } from './stored-cell.js'
import { stylesEvents, type CellStyle as WrittenStyle } from './styles-part.js'
import {
  type Relation,
  relationsEvents,
  resolveTarget,
  type WorkbookPart,
  workbookEvents,
} from './workbook-part.js'

/**
 * Opens an .xlsx or .xlsm: guard, directory, sheet names and defined names. A sheet is unpacked when first asked for;
 * texts and formats with the first sheet. Macros, charts, pictures and links are never unpacked.
 * @throws LogError when the file is hostile, damaged or no workbook
 */
export function openWorkbook(bytes: Uint8Array, fileName: string): Grid {
  const entries = listEntries(bytes)
  refuseForeignZip(new Set(entries.keys()))
  guardSizes(bytes.length, entries)
  const read = partReader(bytes, entries)
  const root = relationsOf(read, '_rels/.rels')
  const target = [...root.values()].find(({ type }) => type === 'officeDocument')?.target ?? 'xl/workbook.xml'
  const path = resolveTarget('', target)
  const folder = path.split('/').slice(0, -1).join('/')
  const part = read(path, workbooks, () => {
    const made: WorkbookPart = { sheets: [], date1904: false, names: [] }
    return [made, workbookEvents(made)]
  })
  const relations = relationsOf(read, `${folder}/_rels/${path.split('/').at(-1)}.rels`)

  const worksheets = part.sheets.filter(
    ({ relation }) => (relations.get(relation)?.type ?? 'worksheet') === 'worksheet',
  )
  if (worksheets.length === 0) refuse('damaged-file', 'the workbook has no worksheet')
  const context = lazily(() => sharedContext(read, entries, folder, relations))
  const sheets = new Map<string, () => Sheet>()
  for (const { name, relation, hidden } of worksheets) {
    sheets.set(
      name.toLowerCase(),
      lazily(() => {
        const store = new CellStore(name, hidden)
        const place = relations.get(relation)
        const partName = place && resolveTarget(folder, place.target)
        if (!partName || !entries.has(partName))
          return refuse('damaged-file', `the part of the sheet ${name} is missing from the workbook`)
        read(partName, undefined, () => [store, sheetEvents(store, context())])
        readComments(read, entries, partName, store)
        return store
      }),
    )
  }
  return {
    kind: 'workbook',
    fileName,
    sheetNames: worksheets.map(({ name }) => name),
    sheet: (name) => sheets.get(name.toLowerCase())?.(),
    names: definedNames(part),
    date1904: part.date1904,
    findings: [...entries.keys()].some((name) => /vbaProject\.bin$/i.test(name))
      ? [remarkFinding(fileText('log-macros'))]
      : [],
  }
}

type PartMemory<T> = ReturnType<typeof partMemory<T>>
/** Parses a part into what `begin` makes, or passes on what a memory has of the same bytes. */
type ReadPart = <T>(name: string, memory: PartMemory<T> | undefined, begin: () => [made: T, XmlEvents]) => T

const relationParts = partMemory<ReadonlyMap<string, Relation>>()
const workbooks = partMemory<WorkbookPart>()
const styleParts = partMemory<readonly WrittenStyle[]>()
const themes = partMemory<readonly string[]>()

function partReader(bytes: Uint8Array, entries: ReadonlyMap<string, ZipEntry>): ReadPart {
  return (name, memory, begin) => {
    const entry = entries.get(name)
    if (!entry) return refuse('damaged-file', `the part ${name} is missing: the workbook is incomplete`)
    const parse = () => {
      const [made, events] = begin()
      const reader = xmlReader(name, events)
      unpackText(bytes, entry, (text) => reader.write(text))
      reader.end()
      return made
    }
    return memory ? memory(bytes, entry, parse) : parse()
  }
}

function relationsOf(read: ReadPart, name: string): ReadonlyMap<string, Relation> {
  return read(name, relationParts, () => {
    const made = new Map<string, Relation>()
    return [made, relationsEvents(made)]
  })
}

function sharedContext(
  read: ReadPart,
  entries: ReadonlyMap<string, ZipEntry>,
  folder: string,
  relations: ReadonlyMap<string, Relation>,
): SheetContext {
  const strings: StoredText[] = []
  let styles: WrittenStyle[] = []
  let theme = ''
  for (const { type, target } of relations.values()) {
    const name = resolveTarget(folder, target)
    if (!entries.has(name)) continue
    if (type === 'sharedStrings') read(name, undefined, () => [strings, stringsEvents(strings)])
    else if (type === 'styles')
      styles = styles.concat(
        read(name, styleParts, () => {
          const made: WrittenStyle[] = []
          return [made, stylesEvents(made)]
        }),
      )
    else if (type === 'theme') theme = name
  }
  return { strings, styles: coloured(read, styles, theme), budget: { cells: 0 } }
}

/** Most logs use no colour of the theme, and their theme is not read. */
function coloured(read: ReadPart, styles: readonly WrittenStyle[], theme: string): CellStyle[] {
  const themed = theme !== '' && styles.some(({ ground }) => ground?.theme !== undefined)
  const colours = themed
    ? read(theme, themes, () => {
        const made: string[] = []
        return [made, themeEvents(made)]
      })
    : []
  return styles.map(({ ground, ...style }) => {
    const fill = ground && colourOf(ground, colours)
    return fill === undefined || fill === '#ffffff' ? style : { ...style, fill }
  })
}

/** Comments are in a part of their own, named by the relations of the sheet. */
function readComments(
  read: ReadPart,
  entries: ReadonlyMap<string, ZipEntry>,
  sheetPart: string,
  store: CellStore,
): void {
  const folders = sheetPart.split('/')
  const own = folders.pop() ?? ''
  const folder = folders.join('/')
  const relations = `${folder}/_rels/${own}.rels`
  if (!entries.has(relations)) return
  for (const { type, target } of relationsOf(read, relations).values()) {
    const name = resolveTarget(folder, target)
    if (type === 'comments' && entries.has(name)) read(name, undefined, () => [store, commentEvents(store)])
  }
}

/** Names that stand for one block of one sheet; formulas, constants and lists of blocks are no place of a log. */
function definedNames(part: WorkbookPart): DefinedName[] {
  return part.names.flatMap(({ name, text }) => {
    const match = /^(?:'((?:[^']|'')+)'|([^'!]+))!([^!]+)$/.exec(text)
    const block = match && parseBlock(match[3] as string)
    if (!match || !block) return []
    return [{ name, sheet: match[1]?.replaceAll("''", "'") ?? (match[2] as string), block }]
  })
}

function lazily<T>(make: () => T): () => T {
  let made: { value: T } | undefined
  return () => {
    made ??= { value: make() }
    return made.value
  }
}
