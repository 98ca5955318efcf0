import { strFromU8 } from 'fflate'
import { xmlReader } from '../../log/container/xml.js'
import { refuse } from '../../log/problem.js'
import { isKnownExtension, nameElement, type Scope, scopeOf } from './namespaces.js'

/** An element with its local name; attributes keep their prefixes. */
export interface XmlNode {
  readonly name: string
  readonly attributes: Readonly<Record<string, string>>
  readonly children: XmlNode[]
  text: string
}

/** Elements of one part; the largest sheet of a summary has some twenty thousand. */
const MOST = 400_000

/**
 * A part as a tree. Throws LogError for what is not well-formed or far larger than any part of a summary.
 * @param foreign - takes what no known program writes: namespaces, and encodings other than UTF-8
 */
export function parseTree(bytes: Uint8Array, part: string, foreign?: Set<string>): XmlNode {
  const root: XmlNode = { name: '', attributes: {}, children: [], text: '' }
  const open: XmlNode[] = [root]
  const scopes: Scope[] = [new Map()]
  let extended = 0
  let main: string | undefined
  let count = 0
  const reader = xmlReader(part, {
    open(local, given, prefix = '') {
      count += 1
      if (count > MOST)
        refuse('too-large', `the part ${part} holds more than ${MOST} elements: no summary does`)
      const scope = scopeOf(given, scopes.at(-1) ?? new Map())
      if (count === 1) main = scope.get(prefix)
      const {
        name,
        attributes,
        foreign: strange,
      } = nameElement(local, prefix, given, scope, extended > 0, main)
      if (strange !== undefined) foreign?.add(strange)
      const node: XmlNode = { name, attributes, children: [], text: '' }
      open.at(-1)?.children.push(node)
      open.push(node)
      scopes.push(scope)
      if (EXTENDED.has(name)) extended += 1
    },
    text(text) {
      const node = open.at(-1)
      if (node) node.text += text
    },
    close() {
      const node = open.pop()
      scopes.pop()
      if (node && EXTENDED.has(node.name)) extended -= 1
      const parent = open.at(-1)
      if (node?.name !== 'AlternateContent' || !parent) return
      if (differsByReader(node)) foreign?.add('alternatives for other programs')
      parent.children.splice(-1, 1, ...chosen(node))
    },
  })
  const text = strFromU8(bytes)
  // Not written by any program that saves workbooks; a comment may split or hide a text.
  if (/<!--|<!\[CDATA\[|<\?(?!xml\b)/.test(text) || text.indexOf('<?xml', 1) > 0)
    foreign?.add('remarks in XML')
  const encoding = /^\s*<\?xml\b[^>]{0,200}?\bencoding\s*=\s*["']([^"']{0,40})/.exec(text.slice(0, 300))?.[1]
  if (encoding !== undefined && !/^utf-?8$/i.test(encoding)) foreign?.add(`encoding ${encoding}`)
  reader.write(text)
  reader.end()
  return root.children[0] ?? root
}

/** Whether one reader may be shown something else than another. Programs write two styles of a chart so. */
const differsByReader = (node: XmlNode): boolean =>
  children(node, 'Fallback').some((one) => one.children.some(({ name }) => name !== 'style'))

/** Where extensions of other namespaces may stand. */
const EXTENDED = new Set(['extLst', 'AlternateContent'])

/**
 * What a reader takes of an alternative (ECMA-376 part 3, clause 9): the first choice it understands, else what is kept for others.
 * Where one reader may understand a choice and another not, both count.
 */
function chosen(node: XmlNode): XmlNode[] {
  const choices = children(node, 'Choice')
  const known = choices.find((one) => (attr(one, 'Requires') ?? '').split(' ').every(isKnownExtension))
  if (known) return known.children
  return [...choices, ...children(node, 'Fallback')].flatMap((one) => one.children)
}

/** Attributes that may be of the namespace of relationships. */
const RELATED: Readonly<Record<string, string>> = { id: 'r:id', embed: 'r:embed', link: 'r:link' }

/** An attribute by its name, or the relationship of that name. */
export function attr(node: XmlNode | undefined, name: string): string | undefined {
  const value = node?.attributes[name]
  if (value !== undefined) return value
  const related = RELATED[name]
  return related === undefined ? undefined : node?.attributes[related]
}

export const child = (node: XmlNode | undefined, name: string): XmlNode | undefined =>
  node?.children.find((one) => one.name === name)

export const children = (node: XmlNode | undefined, name: string): XmlNode[] =>
  node?.children.filter((one) => one.name === name) ?? []

/** The element at the end of a path of names. */
export const at = (node: XmlNode | undefined, ...names: string[]): XmlNode | undefined =>
  names.reduce<XmlNode | undefined>((from, name) => child(from, name), node)

/** Every element of that name, however deep. */
export function deep(node: XmlNode | undefined, name: string, found: XmlNode[] = []): XmlNode[] {
  for (const one of node?.children ?? []) {
    if (one.name === name) found.push(one)
    // The rows of a sheet hold nothing but cells, and are by far the most of it.
    if (one.name !== 'sheetData') deep(one, name, found)
  }
  return found
}

/** All text below an element. */
export const textOf = (node: XmlNode | undefined): string =>
  node ? node.text + node.children.map(textOf).join('') : ''

/** Truth of an attribute (xsd:boolean, and ST_OnOff of older drafts, ECMA-376 part 4); undefined: as `otherwise`. */
export const isOn = (value: string | undefined, otherwise = false): boolean =>
  value === undefined ? otherwise : value === '1' || value === 'true' || value === 'on'
