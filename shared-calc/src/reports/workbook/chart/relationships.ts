import { type Parts, setText, textOf } from '../zip/parts.js'
import { appendToRoot, attributesOf } from './read-xml.js'
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
