import { escaped } from './html.js'

export interface FieldRow {
  readonly path: string
  /** What it holds, as HTML: a link where it is another schema. */
  readonly kind: string
  readonly unit: string
  readonly says: string
  readonly required: boolean
}

interface Node {
  readonly type?: string | readonly string[]
  readonly title?: string
  readonly unit?: string
  readonly minimum?: number
  readonly maximum?: number
  readonly const?: unknown
  readonly enum?: readonly unknown[]
  readonly $ref?: string
  readonly required?: readonly string[]
  readonly properties?: Readonly<Record<string, Node>>
  readonly items?: Node
  readonly anyOf?: readonly Node[]
}

/** The fields of a JSON Schema as rows, nested ones by their path. */
export const fieldRows = (schema: unknown): FieldRow[] => rowsOf(schema as Node, '')

/** What a schema without fields of its own is, such as one of several others. As HTML. */
export const wholeKind = (schema: unknown): string => kindOf(schema as Node)

function rowsOf(node: Node, path: string): FieldRow[] {
  if (node.anyOf) {
    const rows = node.anyOf.flatMap((branch) => rowsOf(branch, path))
    // Branches of a union share fields; each is shown once.
    return rows.filter((row, i) => rows.findIndex((other) => other.path === row.path) === i)
  }
  if (node.items) return rowsOf(node.items, `${path}[]`)
  return Object.entries(node.properties ?? {}).flatMap(([key, held]) => {
    const own = path === '' ? key : `${path}.${key}`
    const required = node.required?.includes(key) ?? false
    return [
      { path: own, kind: kindOf(held), unit: unitOf(held), says: held.title ?? '', required },
      ...rowsOf(held, own),
    ]
  })
}

const unitOf = ({ unit = '' }: Node): string => (unit === '1' ? '' : unit)

function kindOf(node: Node): string {
  if (node.$ref) {
    const name = node.$ref.split('/').at(-1) ?? ''
    return `<a href="#${name}">${name}</a>`
  }
  if (node.const !== undefined) return `<code>${escaped(JSON.stringify(node.const))}</code>`
  if (node.enum) return node.enum.map((one) => `<code>${escaped(String(one))}</code>`).join(' or ')
  // "list of numbers, 0 to 50"; a link and words to choose from stay as they are.
  if (node.items)
    return `list of ${kindOf(node.items).replace(/^(object|string|number|integer|boolean)\b/, '$1s')}`
  if (node.anyOf) return [...new Set(node.anyOf.map(kindOf))].join(' or ')
  const { type = 'anything', minimum, maximum } = node
  const bounded = minimum !== undefined && maximum !== undefined && Math.abs(minimum) < 1e15
  const name = typeof type === 'string' ? type : type.join(' or ')
  return escaped(bounded ? `${name}, ${minimum} to ${maximum}` : name)
}
