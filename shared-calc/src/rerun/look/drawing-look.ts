import { sha256Hex } from '../../contract/sha256.js'
import { type ChartLook, chartOf } from './chart-look.js'
import type { Package } from './package.js'
import { attr, child, deep, isOn, textOf, type XmlNode } from './xml-tree.js'

/** Something that lies on a sheet: a chart, picture, text box or shape. */
export interface DrawnObject {
  readonly kind: 'chart' | 'picture' | 'text box or shape'
  /** Columns and rows, counted from 0, with parts of them. */
  readonly from: { readonly column: number; readonly row: number }
  readonly to: { readonly column: number; readonly row: number }
  readonly hidden: boolean
  /** What a text box says, what a picture is. */
  readonly content: string
  readonly chart?: ChartLook
}

/** English metric units in a row and a column of usual size: enough to say in which one an object ends. */
const EMU = { row: 190_500, column: 609_600 }

export function drawnObjects(from: Package, sheet: string, drawing: XmlNode | undefined): DrawnObject[] {
  const path = from.links(sheet).get(attr(drawing, 'id') ?? '')?.target
  if (path === undefined) return []
  const anchors = from.tree(path)?.children.filter(({ name }) => name.endsWith('Anchor')) ?? []
  return anchors.map((anchor) => objectOf(from, path, anchor))
}

function objectOf(from: Package, path: string, anchor: XmlNode): DrawnObject {
  const start = placeOf(child(anchor, 'from'))
  const size = child(anchor, 'ext')
  const to = child(anchor, 'to')
  const end = to
    ? placeOf(to)
    : {
        column: start.column + Number(attr(size, 'cx') ?? 0) / EMU.column,
        row: start.row + Number(attr(size, 'cy') ?? 0) / EMU.row,
      }
  const links = from.links(path)
  const place = {
    from: start,
    to: end,
    hidden: deep(anchor, 'cNvPr').some((one) => isOn(attr(one, 'hidden'))),
  }
  const chart = deep(anchor, 'graphicData').flatMap((data) =>
    data.children.filter(({ name }) => name === 'chart'),
  )[0]
  if (chart) {
    const target = links.get(attr(chart, 'id') ?? '')?.target ?? ''
    return { ...place, kind: 'chart', content: '', chart: chartOf(from.tree(target)) }
  }
  const picture = deep(anchor, 'blip')[0]
  if (picture) {
    const bytes = from.parts.get(links.get(attr(picture, 'embed') ?? '')?.target ?? '')
    return { ...place, kind: 'picture', content: bytes ? sha256Hex(bytes) : 'not in the file' }
  }
  return { ...place, kind: 'text box or shape', content: deep(anchor, 'txBody').map(textOf).join(' ').trim() }
}

function placeOf(node: XmlNode | undefined): { column: number; row: number } {
  const number = (name: string) => Number(child(node, name)?.text ?? 0)
  return {
    column: number('col') + Math.min(1, number('colOff') / EMU.column),
    row: number('row') + Math.min(1, number('rowOff') / EMU.row),
  }
}
