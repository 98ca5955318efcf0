import type { Parts } from '../../reports/workbook/zip/parts.js'
import { attr, child, children, deep, parseTree, type XmlNode } from './xml-tree.js'

export interface Link {
  /** Last word of its type. */
  readonly type: string
  /** Part, or address outside the file. */
  readonly target: string
  readonly external: boolean
}

export interface SheetPart {
  readonly name: string
  readonly state: string
  readonly path: string
}

/** A workbook's parts as trees, with what leads from one to another. */
export class Package {
  private readonly trees = new Map<string, XmlNode | undefined>()
  readonly workbookPath: string
  readonly sheets: readonly SheetPart[]
  /** Namespaces and encodings that no known program writes, in the parts read so far. */
  readonly foreign = new Set<string>()

  constructor(readonly parts: Parts) {
    const root = [...this.links('').values()].find(({ type }) => type === 'officeDocument')
    this.workbookPath = root?.target ?? 'xl/workbook.xml'
    const links = this.links(this.workbookPath)
    this.sheets = deep(this.tree(this.workbookPath), 'sheet').map((sheet) => ({
      name: attr(sheet, 'name') ?? '',
      state: attr(sheet, 'state') ?? 'visible',
      path: links.get(attr(sheet, 'id') ?? '')?.target ?? '',
    }))
  }

  /** Undefined where there is no such part. Throws LogError. */
  tree(path: string): XmlNode | undefined {
    if (!this.trees.has(path)) {
      const bytes = this.parts.get(path)
      this.trees.set(path, bytes && parseTree(bytes, path, this.foreign))
    }
    return this.trees.get(path)
  }

  /** Whether two links of a part have one id: programs may follow the one or the other. */
  idTwice(part: string): boolean {
    const all = this.relationships(part)
    return new Set(all.map((one) => attr(one, 'Id'))).size < all.length
  }

  private relationships(part: string): readonly XmlNode[] {
    const cut = part.lastIndexOf('/') + 1
    return children(this.tree(`${part.slice(0, cut)}_rels/${part.slice(cut)}.rels`), 'Relationship')
  }

  /** Links of a part, by id. */
  links(part: string): ReadonlyMap<string, Link> {
    const folder = part.slice(0, part.lastIndexOf('/') + 1)
    return new Map(
      this.relationships(part).map((one) => {
        const external = attr(one, 'TargetMode') === 'External'
        const target = attr(one, 'Target') ?? ''
        const type = (attr(one, 'Type') ?? '').split('/').at(-1) ?? ''
        return [
          attr(one, 'Id') ?? '',
          { type, external, target: external ? target : resolve(folder, target) },
        ]
      }),
    )
  }

  /** The one part of a kind that another leads to. */
  linked(part: string, type: string): string | undefined {
    return [...this.links(part).values()].find((link) => link.type === type)?.target
  }
}

function resolve(folder: string, target: string): string {
  const steps = target.startsWith('/') ? [] : folder.split('/').filter(Boolean)
  for (const step of target.split('/')) {
    if (step === '..') steps.pop()
    else if (step !== '.' && step !== '') steps.push(step)
  }
  return steps.join('/')
}

/** Longest name of a program that is repeated in a report. */
const LONGEST = 40

/** The program that says it saved a workbook; empty where none does. */
export function savedBy(parts: Parts): string {
  const from = new Package(parts)
  const tree = from.tree(from.linked('', 'extended-properties') ?? '')
  return (child(tree, 'Application')?.text ?? '').split('$')[0]?.trim().slice(0, LONGEST) ?? ''
}
