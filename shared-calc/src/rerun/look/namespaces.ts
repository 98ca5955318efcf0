/**
 * Namespaces of workbook parts: the standard's, transitional and strict (ECMA-376 parts 1 and 4; ISO/IEC 29500), with those of
 * relationships, of the package and of file properties.
 */
const STANDARD =
  /^(http:\/\/schemas\.openxmlformats\.org\/|http:\/\/purl\.oclc\.org\/ooxml\/|http:\/\/purl\.org\/dc\/)/

/** Of extensions that programs are known to write; they are read where the standard keeps extensions, and nowhere else. */
const EXTENSIONS =
  /^(http:\/\/schemas\.microsoft\.com\/office\/|urn:schemas-microsoft-com:|http:\/\/schemas\.libreoffice\.org\/|http:\/\/www\.gnumeric\.org\/)/

/** Parts of cells and their looks hold elements of this one alone; another's would be passed over by programs, or misread. */
const SHEETS = /\/spreadsheetml\/(2006\/)?main$/
const COMPATIBILITY = 'http://schemas.openxmlformats.org/markup-compatibility/2006'
const RELATIONS = /\/officeDocument\/(2006\/)?relationships$/

const known = new Map<string, boolean>()
/** Few namespaces stand before very many elements. */
function isStandard(namespace: string): boolean {
  const before = known.get(namespace)
  if (before !== undefined) return before
  const is = STANDARD.test(namespace)
  // A file may declare any number of its own.
  if (known.size < MOST_KNOWN) known.set(namespace, is)
  return is
}
const MOST_KNOWN = 100

export type Scope = ReadonlyMap<string, string>

/** What the names of an element and of its attributes stand for; prefixes are free, only namespaces count. */
export interface NamedElement {
  readonly name: string
  readonly attributes: Readonly<Record<string, string>>
  /** A namespace that no known program writes, or an extension where none belongs. */
  readonly foreign?: string
}

/** The prefixes in force for an element: those it declares itself, over those around it. */
export function scopeOf(attributes: Readonly<Record<string, string>>, around: Scope): Scope {
  let scope: Map<string, string> | undefined
  for (const key in attributes) {
    if (!key.startsWith('xmlns')) continue
    scope ??= new Map(around)
    scope.set(key.slice('xmlns:'.length), attributes[key] ?? '')
  }
  return scope ?? around
}

/** @param extended - whether it stands where extensions and alternatives may @param main - the namespace of the part's root */
export function nameElement(
  local: string,
  prefix: string,
  attributes: Readonly<Record<string, string>>,
  scope: Scope,
  extended: boolean,
  main: string | undefined,
): NamedElement {
  const namespace = scope.get(prefix)
  const named = namedAttributes(local, attributes, scope)
  // Most elements are of the part's own namespace.
  if (namespace !== undefined && namespace === main && isStandard(namespace))
    return { name: local, attributes: named }
  const belongs =
    extended ||
    main === undefined ||
    namespace === main ||
    namespace === COMPATIBILITY ||
    !(SHEETS.test(main) || SHEETS.test(namespace ?? ''))
  // A part without any namespace is no part of a workbook, but nothing else in it can be mistaken.
  if (belongs && (namespace === undefined || STANDARD.test(namespace)))
    return { name: local, attributes: named }
  if (namespace !== undefined && EXTENSIONS.test(namespace))
    return { name: extended ? local : `${prefix}:${local}`, attributes: named }
  const strange = namespace ?? 'no namespace'
  return { name: `${strange} ${local}`, attributes: named, foreign: strange }
}

/** Attributes with `r:` for relationships, whatever prefix the part uses; what an alternative requires by its namespaces. */
function namedAttributes(
  local: string,
  attributes: Readonly<Record<string, string>>,
  scope: Scope,
): Readonly<Record<string, string>> {
  let copy: Record<string, string> | undefined
  for (const key in attributes) {
    const cut = key.indexOf(':')
    if (cut < 0 || key.startsWith('xml')) continue
    const isRelation = RELATIONS.test(scope.get(key.slice(0, cut)) ?? '')
    if (isRelation === key.startsWith('r:')) continue
    copy ??= { ...attributes }
    delete copy[key]
    copy[`${isRelation ? 'r' : '?'}:${key.slice(cut + 1)}`] = attributes[key] ?? ''
  }
  if (local !== 'Choice' || attributes.Requires === undefined) return copy ?? attributes
  const required = attributes.Requires.split(/\s+/).filter(Boolean)
  return { ...(copy ?? attributes), Requires: required.map((one) => scope.get(one) ?? one).join(' ') }
}

/** Whether a reader of ours takes a choice that requires these namespaces. */
export const isKnownExtension = (namespace: string): boolean => EXTENSIONS.test(namespace)
