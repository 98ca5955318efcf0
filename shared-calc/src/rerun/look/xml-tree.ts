import { strFromU8 } from 'fflate'
import { xmlReader } from '../../log/container/xml.js'
import { refuse } from '../../log/problem.js'

/** An element with its local name; attributes keep their prefixes. */
export interface XmlNode {
  readonly name: string
  readonly attributes: Readonly<Record<string, string>>
  readonly children: XmlNode[]
  text: string
}

/** Elements of one part; the largest sheet of a summary has some twenty thousand. */
const MOST = 400_000

/** A part as a tree. Throws LogError for what is not well-formed or far larger than any part of a summary. */
export function parseTree(bytes: Uint8Array, part: string): XmlNode {
  const root: XmlNode = { name: '', attributes: {}, children: [], text: '' }
  const open: XmlNode[] = [root]
  let count = 0
  const reader = xmlReader(part, {
    open(name, attributes) {
      count += 1
      if (count > MOST)
        refuse('too-large', `the part ${part} holds more than ${MOST} elements: no summary does`)
      const node: XmlNode = { name, attributes, children: [], text: '' }
      open.at(-1)?.children.push(node)
      open.push(node)
    },
    text(text) {
      const node = open.at(-1)
      if (node) node.text += text
    },
    close() {
      const node = open.pop()
      const parent = open.at(-1)
      if (node?.name === 'AlternateContent' && parent) parent.children.splice(-1, 1, ...chosen(node))
    },
  })
  reader.write(strFromU8(bytes))
  reader.end()
  return root.children[0] ?? root
}

/** Names under which programs know the extensions that they write. */
const KNOWN = /^(a14|a16|c14|c15|x14|x14ac|x15|xr|v2|cx1?|x12ac|p14|wps|le)$/

/**
 * What a reader takes of an alternative (ECMA-376 part 3, clause 9): the first choice it understands, else what is kept for others.
 * Where one reader may understand a choice and another not, both count.
 */
function chosen(node: XmlNode): XmlNode[] {
  const choices = children(node, 'Choice')
  const known = choices.find((one) =>
    (attr(one, 'Requires') ?? '').split(' ').every((name) => KNOWN.test(name)),
  )
  if (known) return known.children
  return [...choices, ...children(node, 'Fallback')].flatMap((one) => one.children)
}

/** An attribute by its local name. */
export function attr(node: XmlNode | undefined, name: string): string | undefined {
  if (!node) return undefined
  const own = node.attributes[name]
  if (own !== undefined) return own
  for (const [key, value] of Object.entries(node.attributes)) if (key.endsWith(`:${name}`)) return value
  return undefined
}

export const child = (node: XmlNode | undefined, name: string): XmlNode | undefined =>
  node?.children.find((one) => one.name === name)

export const children = (node: XmlNode | undefined, name: string): XmlNode[] =>
  node?.children.filter((one) => one.name === name) ?? []

/** The element at the end of a path of names. */
export const at = (node: XmlNode | undefined, ...names: string[]): XmlNode | undefined =>
  names.reduce<XmlNode | undefined>((from, name) => child(from, name), node)

/** Every element of that name, however deep. */
export function deep(node: XmlNode | undefined, name: string): XmlNode[] {
  if (!node) return []
  return node.children.flatMap((one) => [...(one.name === name ? [one] : []), ...deep(one, name)])
}

/** All text below an element. */
export const textOf = (node: XmlNode | undefined): string =>
  node ? node.text + node.children.map(textOf).join('') : ''

/** Truth of an attribute (xsd:boolean); undefined: as `otherwise`. */
export const isOn = (value: string | undefined, otherwise = false): boolean =>
  value === undefined ? otherwise : value === '1' || value === 'true'
