import type { Package } from './package.js'
import { attr, children, deep, type XmlNode } from './xml-tree.js'

/** Kinds of links a summary, or what another program makes of it, leads by; the last word of the type (ECMA-376 part 1, annex A). */
const USUAL = new Set([
  'officeDocument',
  'core-properties',
  'extended-properties',
  'custom-properties',
  'worksheet',
  'styles',
  'theme',
  'sharedStrings',
  'calcChain',
  'drawing',
  'chart',
  'chartStyle',
  'chartColorStyle',
  'image',
  'hyperlink',
  'printerSettings',
  'classificationlabels',
  // Comments and the links of data outside are reported for themselves.
  'comments',
  'threadedComment',
  'person',
  'externalLink',
  'connections',
  'customXml',
  'customXmlProps',
])
/** Of these a part has one at most: with two, each program may take another. */
const ONCE = ['officeDocument', 'styles', 'theme', 'sharedStrings', 'drawing', 'core-properties']

const plainName = /^(?:\[Content_Types\]\.xml|[\w./-]+)$/

/** What a file holds beside the parts of a summary, and what makes it uncertain which part a program shows. In words; `none`. */
export function otherParts(from: Package): string {
  const found = new Set<string>()
  const seen = new Set<string>()
  const sources = ['', ...from.parts.keys()].filter((path) => !/(^|\/)_rels\/|\.vml$/i.test(path))
  for (const source of sources) {
    const links = [...from.links(source).values()]
    for (const { type, target, external } of links) {
      if (!external) seen.add(target)
      if (!USUAL.has(type) && !(type === 'vmlDrawing' && hasComments(links))) found.add(type)
    }
    for (const type of ONCE)
      if (links.filter((link) => link.type === type).length > 1) found.add(`${type} twice`)
    if (from.idTwice(source)) found.add('two links of one name')
  }
  const names = new Set<string>()
  for (const path of from.parts.keys()) {
    if (names.has(path.toLowerCase())) found.add(`part ${path} in two spellings`)
    names.add(path.toLowerCase())
    if (!plainName.test(path)) found.add(`part ${path}`)
    if (!seen.has(path) && !/^\[Content_Types\]|(^|\/)_rels\//.test(path)) found.add(`part ${path}`)
  }
  return [...found].sort().join(', ') || 'none'
}

const hasComments = (links: readonly { readonly type: string }[]): boolean =>
  links.some(({ type }) => type === 'comments')

/** What the list of parts says the workbook and its sheets are. */
export function kindsOfParts(from: Package): string {
  const types = from.tree('[Content_Types].xml')
  const kindOf = (path: string) =>
    attr(
      children(types, 'Override').find((one) => attr(one, 'PartName') === `/${path}`),
      'ContentType',
    ) ?? 'not listed'
  const kinds = [from.workbookPath, ...from.sheets.map(({ path }) => path)].map(
    (path) => kindOf(path).split('.').at(-1) ?? '',
  )
  const workbook = kindOf(from.workbookPath)
  const odd = [...from.parts.keys()].flatMap((source) =>
    /(^|\/)_rels\//.test(source)
      ? []
      : [...from.links(source).values()]
          .filter(({ type, external }) => !external && LISTED.has(type))
          .filter(({ type, target }) => from.parts.has(target) && !kindOf(target).endsWith(`.${type}+xml`))
          .map(({ type, target }) => `${type} listed as ${kindOf(target)}`),
  )
  return [...new Set([workbook.split('/').at(-1) ?? '', ...kinds.slice(1), ...odd])].join(', ')
}

/** Parts whose kind is named like the link that leads to them: a program that goes by the list would not find another. */
const LISTED = new Set(['styles', 'sharedStrings', 'theme', 'drawing', 'chart'])

/**
 * Items that a document library adds to each file it keeps; nothing of them is shown. Namespaces from memory of such files.
 */
const OF_LIBRARIES =
  /^http:\/\/schemas\.(microsoft\.com\/office\/2006\/metadata\/|microsoft\.com\/sharepoint\/v3\/|openxmlformats\.org\/officeDocument\/2006\/bibliography)/

/** Items of data of its own that a file carries, without those of document libraries. */
export function ownData(from: Package): number {
  const items = [...from.links(from.workbookPath).values()].filter(({ type }) => type === 'customXml')
  return items.filter(({ target }) => {
    const properties = [...from.links(target).values()].find(({ type }) => type === 'customXmlProps')
    const schemas = deep(from.tree(properties?.target ?? ''), 'schemaRef').map(schemaOf)
    return schemas.length === 0 || !schemas.every((uri) => OF_LIBRARIES.test(uri))
  }).length
}

/** The only part whose own attributes have a prefix. */
const schemaOf = (reference: XmlNode): string =>
  Object.entries(reference.attributes).find(([key]) => key.endsWith(':uri'))?.[1] ?? ''

/** Whether there are macros, by what the links and the list of parts say; a printer's settings are no macros. */
export function hasMacros(from: Package): boolean {
  const types = from.tree('[Content_Types].xml')
  const said = deep(types, 'Override').some((one) => /vbaProject|macro/i.test(attr(one, 'ContentType') ?? ''))
  const led = [...from.links(from.workbookPath).values()].some(({ type }) => /vba|macro/i.test(type))
  const held = [...from.parts.keys()].some(
    (path) => /\.bin$/i.test(path) && !/printerSettings\d*\.bin$/i.test(path),
  )
  return said || led || held
}
