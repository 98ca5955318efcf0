import { strFromU8, strToU8 } from 'fflate'
import { withSheet } from '../../log/grid/address.js'
import { sheetParts } from '../../reports/workbook/chart/package-parts.js'
import { canonicalPart, isTextPart } from '../../reports/workbook/issued/canonical-part.js'
import type { IssuedParts } from '../../reports/workbook/issued/issued-parts.js'
import { partWords } from '../../reports/workbook/issued/part-words.js'
import { RECORD } from '../../reports/workbook/record-sheet.js'
import type { Parts } from '../../reports/workbook/zip/parts.js'
import type { Difference } from '../report.js'
import { topWords } from './element-words.js'
import { formatsOfCells } from './formats-of-cells.js'
import { seen } from './seen-difference.js'
import { parseTree, type XmlNode } from './xml-tree.js'

/** Parts that are not as issued, in a file no program has saved as a whole, where nothing found so far explains it. */
export function strictParts(
  issuedParts: Parts,
  nowParts: Parts,
  issued: IssuedParts,
  now: IssuedParts,
  found: readonly Difference[],
): Difference[] {
  const sheets = new Map([...sheetParts(issuedParts)].map(([name, path]) => [path, name]))
  const recordPart = sheetParts(issuedParts).get(RECORD)
  const paths = [...new Set([...issued.keys(), ...now.keys()])].sort()
  const ofPart = (path: string, known: readonly Difference[]): Difference[] => {
    if (issued.get(path) === now.get(path) || explained(path, sheets.get(path), known)) return []
    const words = partWords(path, sheets.get(path))
    const [a, b] = [issuedParts.get(path), nowParts.get(path)]
    if (!b) return [seen('part', `${words}: part ${path} is missing`, sheets.get(path), path, null)]
    if (!a) return [seen('part', `a part was added: ${path}`, undefined, null, path)]
    if (!isTextPart(path))
      return [seen('part', `${words} was changed`, undefined, issued.get(path) ?? '', now.get(path) ?? '')]
    const tree = (bytes: Uint8Array) => bare(parseTree(canonicalBytes(path, bytes, recordPart), path))
    const [before, after] = [tree(a), tree(b)]
    const where = firstDifference(before, after)
    const sheet = sheets.get(path)
    const formats = where && sheet ? formatsOfCells(before, after, issuedParts, nowParts) : []
    if (sheet && formats.length > 0)
      return formats.map(({ address, what, issued: was, now: is }) =>
        seen('appearance', what, withSheet(sheet, address), was, is),
      )
    if (where && !firstDifference(withoutHandling(before), withoutHandling(after))) return []
    if (!where && !/charts\//.test(path) && !found.some(({ rounding }) => rounding))
      return [
        seen(
          'part',
          `${words}: written differently`,
          sheets.get(path),
          issued.get(path) ?? '',
          now.get(path) ?? '',
        ),
      ]
    return where
      ? [seen('part', `${words}: ${topWords(where.names)}`, sheets.get(path), where.issued, where.now)]
      : []
  }
  const inSheets = paths.filter((path) => sheets.has(path)).flatMap((path) => ofPart(path, found))
  // A cell that has another format is named; the list of formats then says nothing more.
  const others = paths
    .filter((path) => !sheets.has(path))
    .flatMap((path) => ofPart(path, STYLES.test(path) ? [...found, ...inSheets] : found))
  return [...inSheets, ...others]
}

const canonicalBytes = (path: string, bytes: Uint8Array, recordPart: string | undefined): Uint8Array =>
  strToU8(canonicalPart(path, strFromU8(bytes), recordPart))

const STYLES = /styles|theme/

/** Whether what was found already says that this part is not as issued. */
function explained(path: string, sheet: string | undefined, found: readonly Difference[]): boolean {
  const some = (test: (one: Difference) => boolean) => found.some((one) => !one.rounding && test(one))
  if (sheet !== undefined) return some(({ cell }) => cell !== undefined && sheetOf(cell) === sheet)
  if (/sharedStrings/.test(path))
    return some(({ kind }) => ['cell', 'input', 'appearance', 'sheet'].includes(kind))
  if (STYLES.test(path)) return some(({ kind }) => kind === 'appearance')
  if (/docProps/.test(path))
    return some(({ kind, label }) => kind === 'workbook' || (kind === 'sheet' && /sheet/.test(label)))
  if (/drawings|charts|media|comments|vmlDrawing|threaded/i.test(path))
    return some(({ kind }) => kind === 'drawing')
  if (/workbook\.xml/.test(path))
    return some(({ kind }) => ['name', 'workbook', 'sheet', 'page'].includes(kind))
  if (/\[Content_Types\]|_rels|worksheets/.test(path))
    return some(({ kind }) => kind !== 'cell' && kind !== 'input')
  return false
}

const sheetOf = (cell: string): string => cell.split('!')[0]?.replace(/^'|'$/g, '') ?? cell

/** A sheet without what its cells hold, a chart without what it stores: those are compared with their tolerances. */
function bare(node: XmlNode): XmlNode {
  if (node.name === 'c') {
    const { t: _, ...attributes } = node.attributes
    return { ...node, attributes, children: [] }
  }
  if (node.name === 'numCache') return { ...node, children: [] }
  return { ...node, children: node.children.map(bare) }
}

/**
 * What changes when somebody looks at a workbook or prints it: sizes of rows and columns, which are compared by themselves with
 * what they may cut off; the printer.
 */
const HANDLING: Readonly<Record<string, readonly string[]>> = {
  col: ['width', 'customWidth', 'bestFit'],
  row: ['ht', 'customHeight'],
  pageSetup: ['horizontalDpi', 'verticalDpi'],
}

function withoutHandling(node: XmlNode): XmlNode {
  const left = HANDLING[node.name] ?? []
  return {
    ...node,
    attributes: Object.fromEntries(Object.entries(node.attributes).filter(([key]) => !left.includes(key))),
    children: node.children.map(withoutHandling),
  }
}

interface Found {
  readonly names: readonly string[]
  readonly issued: string | null
  readonly now: string | null
}

/** The first element that is not the same, with the names that lead to it. */
function firstDifference(a: XmlNode, b: XmlNode, above: readonly string[] = []): Found | undefined {
  const names = [...above, a.name]
  if (a.name !== b.name) return { names: [...above, b.name], issued: a.name, now: b.name }
  for (const key of new Set([...Object.keys(a.attributes), ...Object.keys(b.attributes)])) {
    const [one, other] = [a.attributes[key], b.attributes[key]]
    if (one !== other) return { names: [...names, key], issued: one ?? null, now: other ?? null }
  }
  if (a.text.trim() !== b.text.trim()) return { names, issued: a.text.trim(), now: b.text.trim() }
  for (let i = 0; i < Math.max(a.children.length, b.children.length); i += 1) {
    const [one, other] = [a.children[i], b.children[i]]
    if (!one || !other)
      return {
        names: [...names, (one ?? other)?.name ?? ''],
        issued: one?.name ?? null,
        now: other?.name ?? null,
      }
    const found = firstDifference(one, other, names)
    if (found) return found
  }
  return undefined
}
