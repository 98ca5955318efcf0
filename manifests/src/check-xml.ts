import { SaxesParser } from 'saxes'
import { RIBBON_SIZES } from './definition.js'

interface Element {
  name: string
  attributes: Record<string, string>
  text: string
  children: Element[]
}

const NEEDED_ICONS = [16, 32, 80]

/**
 * What breaks an add-in-only manifest in practice, found without Microsoft's service: dangling or unused resource
 * ids, addresses that are not https, missing icons, namespace, runtime page or requirement set, texts too long.
 * @returns one line per fault; an empty list when the manifest is sound
 */
export function checkXml(xml: string): string[] {
  let root: Element
  try {
    root = parse(xml)
  } catch (error) {
    return [`not well-formed XML: ${String(error)}`]
  }
  return [
    ...identity(root),
    ...addresses(root),
    ...resources(root),
    ...icons(root),
    ...functions(root),
    ...requirements(root),
  ]
}

function identity(root: Element): string[] {
  const faults: string[] = []
  if (root.name !== 'OfficeApp') faults.push(`the root is ${root.name}, not OfficeApp`)
  const id = text(root, 'Id')
  if (!/^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i.test(id)) faults.push(`Id "${id}" is no GUID`)
  if (!/^\d+(\.\d+){3}$/.test(text(root, 'Version'))) faults.push('Version must have four parts')
  const order = root.children.map(({ name }) => name)
  const expected = [
    'Id',
    'Version',
    'ProviderName',
    'DefaultLocale',
    'DisplayName',
    'Description',
    'IconUrl',
    'HighResolutionIconUrl',
    'SupportUrl',
    'AppDomains',
    'Hosts',
    'Requirements',
    'DefaultSettings',
    'Permissions',
    'VersionOverrides',
  ]
  const known = order.filter((name) => expected.includes(name))
  if (known.join() !== expected.filter((name) => known.includes(name)).join())
    faults.push('the elements of OfficeApp are out of order')
  for (const name of ['DefaultSettings', 'Permissions', 'Hosts'])
    if (!order.includes(name)) faults.push(`${name} is missing`)
  return faults
}

function addresses(root: Element): string[] {
  return all(root).flatMap(({ name, attributes }) => {
    const value = attributes.DefaultValue ?? ''
    if (/^http:/i.test(value)) return [`${name} ${attributes.id ?? ''} has an http address: ${value}`]
    const wantsAddress =
      /Url$/.test(name) || name === 'SourceLocation' || name === 'bt:Image' || name === 'bt:Url'
    return wantsAddress && attributes.DefaultValue !== undefined && !/^https:\/\/\S+$/.test(value)
      ? [`${name} ${attributes.id ?? ''} has no https address: ${value}`]
      : []
  })
}

function resources(root: Element): string[] {
  const defined = new Map<string, string>()
  const faults: string[] = []
  for (const { name, attributes } of all(root)) {
    if (!/^bt:(Image|Url|String)$/.test(name) || attributes.id === undefined) continue
    if (defined.has(attributes.id)) faults.push(`resource ${attributes.id} is defined twice`)
    if (attributes.id.length > 32) faults.push(`resource id ${attributes.id} has more than 32 characters`)
    defined.set(attributes.id, attributes.DefaultValue ?? '')
  }
  const used = all(root).flatMap(({ attributes }) => attributes.resid ?? [])
  for (const id of used) if (!defined.has(id)) faults.push(`resid ${id} stands for no resource`)
  for (const id of defined.keys()) if (!used.includes(id)) faults.push(`resource ${id} is used nowhere`)
  for (const short of find(root, 'bt:ShortStrings').flatMap(({ children }) => children))
    if ((short.attributes.DefaultValue ?? '').length > 125)
      faults.push(`short string ${short.attributes.id ?? ''} is longer than 125 characters`)
  for (const long of find(root, 'bt:LongStrings').flatMap(({ children }) => children))
    if ((long.attributes.DefaultValue ?? '').length > 250)
      faults.push(`long string ${long.attributes.id ?? ''} is longer than 250 characters`)
  return faults
}

function icons(root: Element): string[] {
  return find(root, 'Icon').flatMap((icon) => {
    const sizes = icon.children.map(({ attributes }) => Number(attributes.size))
    const missing = NEEDED_ICONS.filter((size) => !sizes.includes(size)).map(
      (size) => `an icon lacks size ${size}`,
    )
    const odd = sizes
      .filter((size) => !(RIBBON_SIZES as readonly number[]).includes(size))
      .map((size) => `an icon has size ${size}, which Excel does not ask for`)
    return [...missing, ...odd]
  })
}

function functions(root: Element): string[] {
  const points = find(root, 'ExtensionPoint').filter(
    ({ attributes }) => attributes['xsi:type'] === 'CustomFunctions',
  )
  const faults = points.flatMap((point) =>
    ['Script', 'Page', 'Metadata', 'Namespace'].flatMap((part) =>
      point.children.some(({ name }) => name === part) ? [] : [`the functions have no ${part}`],
    ),
  )
  if (points.length === 0) return ['the manifest has no functions']
  const [page] = points.flatMap((point) => find(point, 'Page')).flatMap(({ children }) => children)
  const [runtime] = find(root, 'Runtime')
  if (runtime?.attributes.lifetime !== 'long')
    faults.push('functions and pane share a runtime only with lifetime "long"')
  if (runtime?.attributes.resid !== page?.attributes.resid)
    faults.push('the runtime and the functions’ page differ')
  return faults
}

function requirements(root: Element): string[] {
  const sets = find(root, 'Set').map(({ attributes }) => `${attributes.Name} ${attributes.MinVersion ?? ''}`)
  return sets.includes('ExcelApi 1.9')
    ? []
    : [`requirement sets are "${sets.join(', ')}"; ExcelApi 1.9 is needed`]
}

function parse(xml: string): Element {
  const top: Element = { name: '', attributes: {}, text: '', children: [] }
  const open = [top]
  const parser = new SaxesParser()
  parser.on('error', (error) => {
    throw error
  })
  parser.on('opentag', ({ name, attributes }) => {
    const element: Element = {
      name,
      attributes: attributes as Record<string, string>,
      text: '',
      children: [],
    }
    open.at(-1)?.children.push(element)
    open.push(element)
  })
  parser.on('text', (text) => {
    const element = open.at(-1)
    if (element) element.text += text
  })
  parser.on('closetag', () => void open.pop())
  parser.write(xml).close()
  const [root] = top.children
  if (!root) throw new Error('the manifest is empty')
  return root
}

const all = (element: Element): Element[] => [element, ...element.children.flatMap(all)]
const find = (root: Element, name: string): Element[] => all(root).filter((element) => element.name === name)
const text = (root: Element, name: string): string =>
  root.children.find((child) => child.name === name)?.text.trim() ?? ''
