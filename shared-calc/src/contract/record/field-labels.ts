import { z } from 'zod'
import { TestRecord } from './test-record.js'

export interface FieldLabel {
  readonly label: string
  readonly unit: string
}

interface SchemaNode {
  readonly title?: string
  readonly unit?: string
  readonly properties?: Readonly<Record<string, SchemaNode>>
  readonly items?: SchemaNode
  readonly anyOf?: readonly SchemaNode[]
  readonly oneOf?: readonly SchemaNode[]
}

let root: SchemaNode | undefined

/** The trade's term and unit of a record's field, from its schema; the field's own name in words where it has none. */
export function fieldLabel(keys: readonly (string | number)[]): FieldLabel {
  const node = nodeAt(keys)
  const last = [...keys].reverse().find((key) => typeof key === 'string') ?? ''
  const unit = node?.unit ?? ''
  return { label: node?.title ?? inWords(String(last)), unit: unit === '1' ? '' : unit }
}

/** Names of the fields that a part of a record may hold. */
export function fieldNames(part: readonly (string | number)[]): readonly string[] {
  const node = nodeAt(part)
  const branches = [node, ...(node?.anyOf ?? []), ...(node?.oneOf ?? [])]
  return branches.flatMap((branch) => Object.keys(branch?.properties ?? {}))
}

function nodeAt(keys: readonly (string | number)[]): SchemaNode | undefined {
  root ??= z.toJSONSchema(TestRecord, { unrepresentable: 'any' }) as SchemaNode
  let node: SchemaNode | undefined = root
  for (const key of keys.flatMap(steps)) node = node && child(node, key)
  return node
}

/** `runs[0].readings`, given as one key, is three. */
const steps = (key: string | number): (string | number)[] =>
  typeof key === 'number'
    ? [key]
    : key.split(/[.[\]]+/).flatMap((step) => (step === '' ? [] : /^\d+$/.test(step) ? Number(step) : step))

function child(node: SchemaNode, key: string | number): SchemaNode | undefined {
  const own = typeof key === 'number' ? node.items : node.properties?.[key]
  if (own) return own
  const found = [...(node.anyOf ?? []), ...(node.oneOf ?? [])].flatMap((branch) => child(branch, key) ?? [])
  const [first] = found
  if (!first || found.every(({ title }) => title === first.title)) return first
  // The branches call it by different terms: none of them would be right for all.
  const { title: _, ...rest } = first
  return rest
}

/** volumeBasis → volume basis; windSpeed_m_s → wind speed. */
function inWords(key: string): string {
  const [word = ''] = key.split('_')
  return word.replace(
    /([a-z])([A-Z])/g,
    (_, before: string, after: string) => `${before} ${after.toLowerCase()}`,
  )
}
