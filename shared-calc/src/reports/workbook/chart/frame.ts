import type { ChartDescription } from './description.js'
import { element, NAMESPACES } from './xml.js'

/**
 * The anchored frame that shows a chart part on a sheet (ECMA-376 Part 1, 20.5.2). It names its own
 * namespaces, so it fits into a drawing written by anyone.
 */
export function chartFrame(chart: ChartDescription, id: number, relationship: string): string {
  const { fromCol, fromRow, toCol, toRow } = chart.anchor
  const look = { id, name: `Chart ${id}`, descr: chart.altText ?? chart.title }
  const names = element('xdr:nvGraphicFramePr', {}, element('xdr:cNvPr', look), '<xdr:cNvGraphicFramePr/>')
  const place = '<xdr:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></xdr:xfrm>'
  const link = element('c:chart', {
    'xmlns:c': NAMESPACES.chart,
    'xmlns:r': NAMESPACES.relationships,
    'r:id': relationship,
  })
  const graphic = element('a:graphic', {}, element('a:graphicData', { uri: NAMESPACES.chart }, link))
  return element(
    'xdr:twoCellAnchor',
    { 'xmlns:xdr': NAMESPACES.sheetDrawing, 'xmlns:a': NAMESPACES.drawing, editAs: 'oneCell' },
    corner('xdr:from', fromCol, fromRow),
    corner('xdr:to', toCol, toRow),
    element('xdr:graphicFrame', { macro: '' }, names, place, graphic),
    '<xdr:clientData/>',
  )
}

function corner(name: string, col: number, row: number): string {
  return `<${name}><xdr:col>${col}</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${row}</xdr:row><xdr:rowOff>0</xdr:rowOff></${name}>`
}
