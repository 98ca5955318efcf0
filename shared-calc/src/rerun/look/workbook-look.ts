import type { Parts } from '../../reports/workbook/zip/parts.js'
import { comparableFormula } from '../formula-text.js'
import { Package } from './package.js'
import { readSheet, type SheetLook } from './sheet-look.js'
import { readStyles } from './styles.js'
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
  return {
    sheets,
    names: namesOf(workbook, sheets),
    settings: settingsOf(from, workbook),
    properties: propertiesOf(from),
  }
}

/** Names that programs add for their own use. */
const OF_PROGRAMS = /^_xlnm\.(Sheet_Title|_FilterDatabase)$/i

const WORDS: Readonly<Record<string, string>> = {
  print_area: 'print area',
  print_titles: 'rows printed on every page',
}

function namesOf(workbook: XmlNode | undefined, sheets: readonly SheetLook[]): Map<string, string> {
  return new Map(
    deep(workbook, 'definedName').flatMap((one): [string, string][] => {
      const name = attr(one, 'name') ?? ''
      if (OF_PROGRAMS.test(name)) return []
      const sheet = attr(one, 'localSheetId')
      const own = sheet === undefined ? '' : ` of sheet ${sheets[Number(sheet)]?.name ?? sheet}`
      const word = name.replace(/^_xlnm\./, '').toLowerCase()
      return [[`${WORDS[word] ?? `defined name ${word}`}${own}`, comparableFormula(one.text.trim())]]
    }),
  )
}

function settingsOf(from: Package, workbook: XmlNode | undefined): Map<string, string> {
  const calculation = child(workbook, 'calcPr')
  const window = deep(workbook, 'workbookView')[0]
  const links = [...from.links(from.workbookPath).values()]
  const kinds = (pattern: RegExp) => links.filter(({ type }) => pattern.test(type)).length
  return new Map([
    ['calculation', attr(calculation, 'calcMode') ?? 'auto'],
    ['precision', isOn(attr(calculation, 'fullPrecision'), true) ? 'full' : 'as displayed'],
    ['window', attr(window, 'visibility') ?? 'visible'],
    ['tabs of the sheets shown', isOn(attr(window, 'showSheetTabs'), true) ? 'yes' : 'no'],
    ['dates count from', isOn(attr(child(workbook, 'workbookPr'), 'date1904')) ? '1904' : '1900'],
    ['links to other workbooks', String(kinds(/^externalLink/))],
    ['connections to data outside', String(kinds(/^(connections|customXml|queryTable|model)/))],
    ['macros', [...from.parts.keys()].some((path) => /\.bin$/i.test(path)) ? 'yes' : 'no'],
  ])
}

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
    ['date of making', text(core, 'created')],
    ['description', text(core, 'description')],
    ['category', text(core, 'category')],
    ['keywords', text(core, 'keywords').replaceAll(',', '')],
    ['state', text(core, 'contentStatus')],
    ['company', text(more, 'Company')],
    ['manager', text(more, 'Manager')],
    [
      'properties of its own',
      children(own, 'property')
        .map((one) => attr(one, 'name') ?? '')
        .join(', '),
    ],
  ])
}
