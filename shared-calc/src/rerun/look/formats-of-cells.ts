import type { Parts } from '../../reports/workbook/zip/parts.js'
import { readStyleTree, type StyleTree } from './style-tree.js'
import type { XmlNode } from './xml-tree.js'

/** A cell that has another format, with the first thing in it that is another. */
export interface OtherFormat {
  readonly address: string
  readonly what: string
  readonly issued: string
  readonly now: string
}

/** Most cells that are named; a style put on a whole sheet is one change. */
const MOST = 20

/** Cells of a sheet whose format is another one: what is not seen at first, in a file that no program has saved as a whole. */
export function formatsOfCells(
  issued: XmlNode,
  now: XmlNode,
  issuedParts: Parts,
  nowParts: Parts,
): readonly OtherFormat[] {
  const was = stylesOfCells(issued)
  const changed = [...stylesOfCells(now)].filter(([address, style]) => {
    const before = was.get(address)
    return before !== undefined && before !== style
  })
  if (changed.length === 0) return []
  const [before, after] = [readStyleTree(issuedParts), readStyleTree(nowParts)]
  if (!before || !after) return []
  return changed.slice(0, MOST).flatMap(([address, style]) => {
    const other = otherFormat(before, was.get(address) ?? '0', after, style)
    return other ? [{ address, ...other }] : []
  })
}

/** Address of each cell → index of its format. */
function stylesOfCells(sheet: XmlNode, into = new Map<string, string>()): Map<string, string> {
  if (sheet.name === 'c') into.set(sheet.attributes.r ?? '', sheet.attributes.s ?? '0')
  else for (const child of sheet.children) stylesOfCells(child, into)
  return into
}

const LISTS = [
  ['font', 'fontId'],
  ['background', 'fillId'],
  ['border', 'borderId'],
] as const

function otherFormat(
  before: StyleTree,
  was: string,
  after: StyleTree,
  is: string,
): Omit<OtherFormat, 'address'> | undefined {
  const [a, b] = [before.formats[Number(was)], after.formats[Number(is)]]
  for (const [word, key] of LISTS) {
    const [one, other] = [
      before[word][Number(a?.attributes[key] ?? 0)],
      after[word][Number(b?.attributes[key] ?? 0)],
    ]
    const [issued, now] = [written(one), written(other)]
    if (issued !== now) return { what: `${word} of the cell`, ...apart(issued, now) }
  }
  const [issued, now] = [a, b].map((format, i) =>
    written(format && withoutIndexes(format, i === 0 ? before : after)),
  ) as [string, string]
  return issued === now ? undefined : { what: 'format of the cell', ...apart(issued, now) }
}

/** A format with the code of its numbers in place of what is only counted in one file. */
const withoutIndexes = ({ name, attributes, children, text }: XmlNode, { codes }: StyleTree): XmlNode => {
  const { fontId: _, fillId: __, borderId: ___, xfId: ____, numFmtId = '0', ...rest } = attributes
  return { name, attributes: { ...rest, number: codes.get(numFmtId) ?? numFmtId }, children, text }
}

/** Elements of a font that the format names in letters. */
const WORDS: Readonly<Record<string, string>> = {
  sz: 'size',
  b: 'bold',
  i: 'italic',
  u: 'underlined',
  strike: 'struck through',
}

/** An element as one line, in no order of attributes. */
function written(node: XmlNode | undefined): string {
  if (!node) return ''
  const name = WORDS[node.name] ?? node.name
  const { val, ...others } = node.attributes
  if (val !== undefined && Object.keys(others).length + node.children.length === 0) return `${name} ${val}`
  const inside = [
    ...Object.entries(node.attributes)
      .map(([key, value]) => `${key} ${value}`)
      .sort(),
    ...node.children.map(written),
  ]
  return inside.length === 0 ? name : `${name} (${inside.join(', ')})`
}

/** Two lines without the elements that both have. */
function apart(issued: string, now: string): { issued: string; now: string } {
  const pieces = (line: string) => line.replace(/^\w+ \((.*)\)$/, '$1').split(/, (?![^(]*\))/)
  const [a, b] = [pieces(issued), pieces(now)]
  const rest = (some: string[], others: string[]) => some.filter((one) => !others.includes(one)).join(', ')
  return { issued: rest(a, b) || 'none', now: rest(b, a) || 'none' }
}
