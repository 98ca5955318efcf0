import { type Parts, STYLES_PART } from '../../reports/workbook/zip/parts.js'
import { parseTree, type XmlNode } from './xml-tree.js'

/** The lists of the styles part, by the index that cells use. */
export interface StyleTree {
  readonly formats: readonly XmlNode[]
  readonly font: readonly XmlNode[]
  readonly background: readonly XmlNode[]
  readonly border: readonly XmlNode[]
  /** Id → code of the number formats of the file's own. */
  readonly codes: ReadonlyMap<string, string>
}

/** Undefined where the file has no such part. */
export function readStyleTree(parts: Parts): StyleTree | undefined {
  const bytes = parts.get(STYLES_PART)
  if (!bytes) return undefined
  const lists = parseTree(bytes, STYLES_PART).children
  const inside = (wanted: string) => lists.find(({ name }) => name === wanted)?.children ?? []
  return {
    formats: inside('cellXfs'),
    font: inside('fonts'),
    background: inside('fills'),
    border: inside('borders'),
    codes: new Map(
      inside('numFmts').map(({ attributes }) => [attributes.numFmtId ?? '', attributes.formatCode ?? '']),
    ),
  }
}
