import { SaxesParser } from 'saxes'
import { type Parts, setText, textOf } from '../zip/parts.js'
import { element, NAMESPACES, XML_HEAD } from './xml.js'

export interface Relationship {
  id: string
  type: string
  /** Part path without leading slash. */
  target: string
}

/** Relationships of a part; none when it has no relationships part. */
export function relationshipsOf(parts: Parts, part: string): Relationship[] {
  const path = relationshipsPath(part)
  if (!parts.has(path)) return []
  return attributesOf(textOf(parts, path), 'Relationship').map(({ Id = '', Type = '', Target = '' }) => ({
    id: Id,
    type: Type,
    target: resolve(part, Target),
  }))
}

/** Adds a relationship of the given kind (last word of its type) and returns its id. */
export function addRelationship(parts: Parts, part: string, kind: string, target: string): string {
  const path = relationshipsPath(part)
  const ids = relationshipsOf(parts, part).map(({ id }) => Number(/^rId(\d+)$/.exec(id)?.[1] ?? 0))
  const Id = `rId${Math.max(0, ...ids) + 1}`
  const Type = `${NAMESPACES.relationships}/${kind}`
  const added = element('Relationship', { Id, Type, Target: relative(part, target) })
  const text = parts.has(path)
    ? appendToRoot(textOf(parts, path), added, path)
    : XML_HEAD + element('Relationships', { xmlns: NAMESPACES.packageRelationships }, added)
  setText(parts, path, text)
  return Id
}

function relationshipsPath(part: string): string {
  const cut = part.lastIndexOf('/') + 1
  return `${part.slice(0, cut)}_rels/${part.slice(cut)}.rels`
}

function resolve(part: string, target: string): string {
  if (target.startsWith('/')) return target.slice(1)
  const folders = part.split('/').slice(0, -1)
  for (const step of target.split('/')) {
    if (step === '..') folders.pop()
    else if (step !== '.') folders.push(step)
  }
  return folders.join('/')
}

function relative(part: string, target: string): string {
  const from = part.split('/').slice(0, -1)
  const to = target.split('/')
  const apart = from.findIndex((folder, depth) => folder !== to[depth])
  const common = apart < 0 ? from.length : apart
  return [...from.slice(common).map(() => '..'), ...to.slice(common)].join('/')
}

/** Attributes, by local name, of every element with that local name. Throws Error for malformed XML. */
export function attributesOf(xml: string, local: string): Record<string, string>[] {
  const found: Record<string, string>[] = []
  const parser = new SaxesParser({ xmlns: true })
  parser.on('opentag', (tag) => {
    if (tag.local !== local) return
    found.push(Object.fromEntries(Object.values(tag.attributes).map(({ local, value }) => [local, value])))
  })
  parser.write(xml).close()
  return found
}

/** Puts a fragment last inside the root element. Throws RangeError, naming the part, when the root is empty. */
export function appendToRoot(xml: string, fragment: string, part: string): string {
  const end = xml.lastIndexOf('</')
  if (end < 0) throw new RangeError(`${part} has an empty root element`)
  return xml.slice(0, end) + fragment + xml.slice(end)
}
