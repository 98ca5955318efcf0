import type { Parts } from '../../reports/workbook/zip/parts.js'
import { comparableFormula } from '../formula-text.js'
import { hasMacros, kindsOfParts, otherParts, ownData } from './other-parts.js'
import { Package } from './package.js'
import { readSheet, type SheetLook } from './sheet-look.js'
import { readStyles, type Styles } from './styles.js'
import { unusualInWorkbook } from './usual-elements.js'
import { attr, child, children, deep, isOn, textOf, type XmlNode } from './xml-tree.js'

/** What a person sees of a workbook, and what decides what its cells come to. */
export interface WorkbookLook {
  readonly sheets: readonly SheetLook[]
  /** Name, with its sheet where it belongs to one → what it stands for. */
  readonly names: ReadonlyMap<string, string>
  /** In words → value. */
  readonly settings: ReadonlyMap<string, string>
  readonly properties: ReadonlyMap<string, string>
}

/** Throws LogError where a part is damaged. */
export function readLook(parts: Parts): WorkbookLook {
  const from = new Package(parts)
  const styles = readStyles(from)
  const texts = children(from.tree(from.linked(from.workbookPath, 'sharedStrings') ?? ''), 'si')
  const workbook = from.tree(from.workbookPath)
  const sheets = from.sheets.map((part) => readSheet(from, part, styles, texts))
  const properties = propertiesOf(from)
  // Last: it says what was strange in the parts read before.
  return {
    sheets,
    names: namesOf(workbook, sheets),
    properties,
    settings: settingsOf(from, workbook, styles),
  }
}

/** Names that programs add for their own use. */
const OF_PROGRAMS = /^_xlnm\.(Sheet_Title|_FilterDatabase)$/i

const WORDS: Readonly<Record<string, string>> = {
  print_area: 'print area',
  print_titles: 'rows printed on every page',
}

/** How Gnumeric keeps rows and columns repeated on every page together, which it cannot read. */
const NOT_READ = /^ERROR\("([^"]{0,200})"\)$/

function namesOf(workbook: XmlNode | undefined, sheets: readonly SheetLook[]): Map<string, string> {
  const names = new Map<string, string>()
  for (const one of deep(workbook, 'definedName')) {
    const name = attr(one, 'name') ?? ''
    if (OF_PROGRAMS.test(name)) continue
    const sheet = attr(one, 'localSheetId')
    const own = sheet === undefined ? '' : ` of sheet ${sheets[Number(sheet)]?.name ?? sheet}`
    const word = name.replace(/^_xlnm\./, '').toLowerCase()
    const key = `${WORDS[word] ?? `defined name ${word}`}${own}`
    const before = names.get(key)
    const text = word === 'print_titles' ? one.text.trim().replace(NOT_READ, '$1') : one.text.trim()
    const means = [comparableFormula(text), ...remarksOf(one)].join(', ')
    names.set(key, before === undefined ? means : `${before}, and once more ${means}`)
  }
  return names
}

/** What a name says of itself beside what it stands for: hidden names, remarks, names of macros. */
const remarksOf = (name: XmlNode): string[] =>
  Object.entries(name.attributes).flatMap(([key, value]) =>
    key === 'name' ||
    key === 'localSheetId' ||
    key.startsWith('xml') ||
    value === '' ||
    value === '0' ||
    value === 'false'
      ? []
      : [`${key} ${value}`],
  )

function settingsOf(from: Package, workbook: XmlNode | undefined, styles: Styles): Map<string, string> {
  const calculation = child(workbook, 'calcPr')
  const properties = child(workbook, 'workbookPr')
  // A file may have several windows, each with views of its own.
  const windows = deep(workbook, 'workbookView')
  const links = [...from.links(from.workbookPath).values()]
  const kinds = (pattern: RegExp) => links.filter(({ type }) => pattern.test(type)).length
  return new Map([
    ['calculation', attr(calculation, 'calcMode') ?? 'auto'],
    ['precision', isOn(attr(calculation, 'fullPrecision'), true) ? 'full' : 'as displayed'],
    [
      'window',
      windows.map((one) => attr(one, 'visibility') ?? 'visible').find((state) => state !== 'visible') ??
        'visible',
    ],
    ['sheet tabs shown', windows.every((one) => isOn(attr(one, 'showSheetTabs'), true)) ? 'yes' : 'no'],
    [
      'scroll bars shown',
      windows.every(
        (one) => isOn(attr(one, 'showHorizontalScroll'), true) && isOn(attr(one, 'showVerticalScroll'), true),
      )
        ? 'yes'
        : 'no',
    ],
    ['cells named in formulas by', attr(calculation, 'refMode') ?? 'A1'],
    [
      'structure protected',
      isOn(attr(child(workbook, 'workbookProtection'), 'lockStructure')) ? 'yes' : 'no',
    ],
    ['other contents of the workbook', unusualInWorkbook(workbook)],
    ['other contents of the styles', styles.unusual],
    ['charts and pictures shown', attr(properties, 'showObjects') ?? 'all'],
    ['dates count from', isOn(attr(properties, 'date1904')) ? '1904' : '1900'],
    ['links to other workbooks', String(kinds(/^externalLink/))],
    ['connections to external data', String(kinds(/^(connections|queryTable|model)/) + ownData(from))],
    ['macros', hasMacros(from) ? 'yes' : 'no'],
    ['other contents of the file', otherParts(from)],
    ['type of file', kindsOfParts(from)],
    ['contents only some programs read', [...from.foreign].sort().join(', ') || 'nothing'],
  ])
}

/** Properties that document libraries and labels of confidentiality put into a file; from memory of such files. */
const OF_LABELS = /^(MSIP_Label_|ContentTypeId$|MediaServiceImageTags$)/

/** Properties that a program does not change by itself when it saves. */
function propertiesOf(from: Package): Map<string, string> {
  const core = from.tree(from.linked('', 'core-properties') ?? '')
  const more = from.tree(from.linked('', 'extended-properties') ?? '')
  const own = from.tree(from.linked('', 'custom-properties') ?? '')
  const text = (tree: XmlNode | undefined, name: string) =>
    textOf(child(tree, name)).replaceAll('_x005F_', '_').replace(/\s+/g, ' ').trim()
  return new Map([
    ['author', text(core, 'creator')],
    ['title', text(core, 'title')],
    ['subject', text(core, 'subject')],
    ['date created', text(core, 'created')],
    ['description', text(core, 'description')],
    ['category', text(core, 'category')],
    ['keywords', text(core, 'keywords').replaceAll(',', '')],
    ['state', text(core, 'contentStatus')],
    ['version', text(core, 'version')],
    ['identifier', text(core, 'identifier')],
    ['base address of links', text(more, 'HyperlinkBase')],
    ['company', text(more, 'Company')],
    ['manager', text(more, 'Manager')],
    [
      'custom properties',
      children(own, 'property')
        .map((one) => attr(one, 'name') ?? '')
        .filter((name) => !OF_LABELS.test(name))
        .join(', '),
    ],
  ])
}
