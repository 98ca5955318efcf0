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
  /** How it is turned, cut or recoloured; empty where it is shown as it is. */
  readonly changed: string
  /** Whether it is on paper too. */
  readonly printed: boolean
  /** Text for screen readers; some programs lose it. */
  readonly description: string
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
    changed: changesOf(anchor),
    printed: isOn(attr(child(anchor, 'clientData'), 'fPrintsWithSheet'), true),
    description: deep(anchor, 'cNvPr')
      .map((one) => attr(one, 'descr') ?? '')
      .join(' '),
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

/** What is done to an object: turned or mirrored, given a macro or a link, and to a picture: cut, recoloured, given another shape or another source. */
function changesOf(anchor: XmlNode): string {
  const turned = deep(anchor, 'xfrm').flatMap((one) => [
    ...(Number(attr(one, 'rot') ?? 0) === 0 ? [] : ['turned']),
    ...(isOn(attr(one, 'flipH')) || isOn(attr(one, 'flipV')) ? ['mirrored'] : []),
  ])
  const pictures = deep(anchor, 'blipFill').flatMap((fill) => [
    ...deep(fill, 'srcRect').flatMap((cut) =>
      ['l', 't', 'r', 'b'].some((side) => Math.abs(Number(attr(cut, side) ?? 0)) > CUT) ? ['cut'] : [],
    ),
    ...deep(fill, 'blip').flatMap((blip) => [
      ...(attr(blip, 'link') === undefined ? [] : ['stored outside the file']),
      ...blip.children.filter(({ name }) => name !== 'extLst').map(({ name }) => `recoloured (${name})`),
      ...(deep(blip, 'svgBlip').length > 0 ? ['a different picture in some programs'] : []),
    ]),
  ])
  const shapes = deep(anchor, 'pic').flatMap((picture) =>
    deep(child(picture, 'spPr'), 'prstGeom')
      .map((one) => attr(one, 'prst') ?? 'rect')
      .filter((shape) => shape !== 'rect'),
  )
  const macros = anchor.children.some((one) => (attr(one, 'macro') ?? '') !== '') ? ['starts a macro'] : []
  const leads = ['hlinkClick', 'hlinkHover'].some((name) => deep(anchor, name).length > 0)
  return [
    ...turned,
    ...pictures,
    ...shapes,
    ...macros,
    ...(leads ? ['leads elsewhere when clicked'] : []),
  ].join(', ')
}

/** Thousandths of a per cent of a side: below one per cent nothing is lost. */
const CUT = 1000

function placeOf(node: XmlNode | undefined): { column: number; row: number } {
  const number = (name: string) => Number(child(node, name)?.text ?? 0)
  return {
    column: number('col') + Math.min(1, number('colOff') / EMU.column),
    row: number('row') + Math.min(1, number('rowOff') / EMU.row),
  }
}
