import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate'

/** One cell as it stands in a worksheet part. */
export interface StoredCell {
  readonly sheet: string
  readonly address: string
  readonly xml: string
}

const CELL = /<c r="([A-Z]+\d+)"[^>]*?(?:\/>|>.*?<\/c>)/gs

type Parts = Record<string, Uint8Array>

const escaped = (text: string) =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;')

/** A workbook whose cells can be listed and changed one at a time, below any program's own notion of them. */
export class Tamperer {
  private readonly parts: Parts
  private readonly paths: ReadonlyMap<string, string>

  constructor(bytes: Uint8Array) {
    this.parts = unzipSync(bytes)
    const workbook = strFromU8(this.part('xl/workbook.xml'))
    const links = strFromU8(this.part('xl/_rels/workbook.xml.rels'))
    this.paths = new Map(
      [...workbook.matchAll(/<sheet\b[^>]*?name="([^"]+)"[^>]*?r:id="([^"]+)"/g)].map(
        ([, name = '', id = '']) => {
          const link = links.match(/<Relationship\b[^>]*>/g)?.find((one) => one.includes(`Id="${id}"`)) ?? ''
          return [name, `xl/${/Target="([^"]+)"/.exec(link)?.[1] ?? ''}`]
        },
      ),
    )
  }

  /** Every cell that holds something. */
  cells(): StoredCell[] {
    return [...this.paths].flatMap(([sheet, path]) =>
      [...strFromU8(this.part(path)).matchAll(CELL)]
        .filter(([xml]) => /<v>|<f>|<is>/.test(xml))
        .map(([xml, address = '']) => ({ sheet, address, xml })),
    )
  }

  /** The workbook with one cell's XML replaced. */
  with(cell: StoredCell, xml: string): Uint8Array {
    const path = this.paths.get(cell.sheet) ?? ''
    const before = strFromU8(this.part(path))
    const after = before.replace(cell.xml, () => xml)
    if (after === before) throw new Error(`nothing changed in ${cell.sheet}!${cell.address}`)
    return zipSync({ ...this.parts, [path]: strToU8(after) }, { level: 1 })
  }

  /** The workbook with many cells replaced at once. */
  withAll(changes: readonly { cell: StoredCell; xml: string }[]): Uint8Array {
    const parts = { ...this.parts }
    for (const [sheet, path] of this.paths) {
      const here = new Map(
        changes.filter(({ cell }) => cell.sheet === sheet).map(({ cell, xml }) => [cell.address, xml]),
      )
      if (here.size === 0) continue
      const text = strFromU8(this.part(path)).replace(
        CELL,
        (xml, address: string) => here.get(address) ?? xml,
      )
      parts[path] = strToU8(text)
    }
    return zipSync(parts, { level: 1 })
  }

  /** What a cell of shared text says. */
  sharedText(xml: string): string | undefined {
    const index = / t="s"/.test(xml) ? /<v>(\d+)<\/v>/.exec(xml)?.[1] : undefined
    if (index === undefined) return undefined
    const items = [...strFromU8(this.part('xl/sharedStrings.xml')).matchAll(/<si>(.*?)<\/si>/gs)]
    return items[Number(index)]?.[1]?.replace(/<[^>]+>/g, '')
  }

  private part(path: string): Uint8Array {
    const part = this.parts[path]
    if (!part) throw new Error(`the workbook has no part ${path}`)
    return part
  }
}

/** The same cell holding another number. */
export const withNumber = (cell: StoredCell, value: number): string =>
  cell.xml
    .replace(/ t="\w+"/, '')
    .replace(/<v>.*?<\/v>|(?=<\/c>)/s, (found) =>
      found || !cell.xml.includes('<v>') ? `<v>${value}</v>` : found,
    )

/** The same cell holding a text typed over it. */
export const withText = (cell: StoredCell, text: string): string => {
  const style = /\bs="\d+"/.exec(cell.xml)?.[0] ?? ''
  return `<c r="${cell.address}" ${style} t="inlineStr"><is><t xml:space="preserve">${escaped(text)}</t></is></c>`
}

/** The same cell with another formula and its stored result kept. Undefined where it has none. */
export const withFormula = (cell: StoredCell, formula: string): string | undefined =>
  cell.xml.includes('<f>') ? cell.xml.replace(/<f>.*?<\/f>/s, () => `<f>${escaped(formula)}</f>`) : undefined

/** The same cell without its formula: the result typed in. Undefined where it has none. */
export const withoutFormula = (cell: StoredCell): string | undefined =>
  cell.xml.includes('<f>') ? cell.xml.replace(/<f>.*?<\/f>/s, '') : undefined

/** The cell emptied. */
export const emptied = (cell: StoredCell): string => `<c r="${cell.address}"/>`

/** Ways to tamper with a cell; undefined where the cell offers no hold for it. */
export const tampers: Readonly<Record<string, (cell: StoredCell, book: Tamperer) => string | undefined>> = {
  'another number': (cell) => {
    const stored = numberIn(cell)
    return stored === undefined ? undefined : withNumber(cell, stored === 0 ? 0.001 : stored * 1.000001)
  },
  'a number in its last shown place': (cell) => {
    const stored = numberIn(cell)
    return stored === undefined ? undefined : withNumber(cell, Number((stored * 1.02 + 0.01).toPrecision(3)))
  },
  'a text over it': (cell) => withText(cell, 'typed over'),
  'one letter of its text': (cell, book) => {
    const text = book.sharedText(cell.xml)
    return text === undefined || cell.xml.includes('<f>') ? undefined : withText(cell, `${text}.`)
  },
  'another formula': (cell) => withFormula(cell, '1+1'),
  'its formula replaced by the result': (cell) => withoutFormula(cell),
  // An empty text looks like an empty cell: nothing was tampered with.
  'nothing in it': (cell, book) => (book.sharedText(cell.xml) === '' ? undefined : emptied(cell)),
}

function numberIn({ xml }: StoredCell): number | undefined {
  if (/ t="(?!n")\w+"/.test(xml)) return undefined
  const stored = /<v>(.*?)<\/v>/s.exec(xml)?.[1]
  return stored === undefined ? undefined : Number(stored)
}
