import { sheetParts } from '../chart/package-parts.js'
import { addRelationship, appendToRoot, attributesOf } from '../chart/relationships.js'
import { drawingOf } from '../chart/sheet-drawing.js'
import { element, NAMESPACES } from '../chart/xml.js'
import { type Parts, setText, textOf } from '../zip/parts.js'
import type { Picture } from './picture.js'

const CONTENT_TYPES = '[Content_Types].xml'
const EMU_PER_POINT = 12_700

/** A corner of a picture: column and row count from 0, then points from the left and upper edge of that cell. */
export interface Corner {
  readonly column: number
  readonly row: number
  readonly right_pt: number
  readonly down_pt: number
}

/** A picture on a sheet. */
export interface PlacedPicture {
  readonly sheetName: string
  readonly picture: Picture
  readonly from: Corner
  readonly to: Corner
}

/** Adds pictures to a finished workbook; one that is shown on several sheets is held once. */
export function addPicturesTo(parts: Parts, placed: readonly PlacedPicture[]): void {
  const sheets = sheetParts(parts)
  const held = new Map<Picture, string>()
  for (const one of placed) {
    const path = held.get(one.picture) ?? addMedia(parts, one.picture, held.size + 1)
    held.set(one.picture, path)
    const drawing = drawingOf(parts, sheets.get(one.sheetName) ?? '')
    const relationship = addRelationship(parts, drawing, 'image', path)
    const text = textOf(parts, drawing)
    const ids = attributesOf(text, 'cNvPr').map(({ id }) => Number(id))
    setText(parts, drawing, appendToRoot(text, frame(one, Math.max(1, ...ids) + 1, relationship), drawing))
  }
}

function addMedia(parts: Parts, { type, bytes }: Picture, number: number): string {
  const path = `xl/media/picture${number}.${type}`
  parts.set(path, bytes)
  const types = textOf(parts, CONTENT_TYPES)
  if (!attributesOf(types, 'Default').some(({ Extension }) => Extension === type)) {
    const added = element('Default', { Extension: type, ContentType: `image/${type}` })
    setText(parts, CONTENT_TYPES, appendToRoot(types, added, CONTENT_TYPES))
  }
  return path
}

/** The anchored frame of a picture (ECMA-376 Part 1, 20.5.2). It names its own namespaces. */
function frame({ picture, from, to }: PlacedPicture, id: number, relationship: string): string {
  const blip = element('a:blip', { 'xmlns:r': NAMESPACES.relationships, 'r:embed': relationship })
  const names = element(
    'xdr:nvPicPr',
    {},
    element('xdr:cNvPr', { id, name: `Picture ${id}`, descr: picture.caption }),
    element('xdr:cNvPicPr', {}, element('a:picLocks', { noChangeAspect: 1 })),
  )
  return element(
    'xdr:twoCellAnchor',
    { 'xmlns:xdr': NAMESPACES.sheetDrawing, 'xmlns:a': NAMESPACES.drawing, editAs: 'oneCell' },
    corner('xdr:from', from),
    corner('xdr:to', to),
    element(
      'xdr:pic',
      {},
      names,
      element('xdr:blipFill', {}, blip, '<a:stretch><a:fillRect/></a:stretch>'),
      element('xdr:spPr', {}, element('a:prstGeom', { prst: 'rect' }, '<a:avLst/>')),
    ),
    '<xdr:clientData/>',
  )
}

function corner(name: string, { column, row, right_pt, down_pt }: Corner): string {
  const emu = (points: number) => Math.round(points * EMU_PER_POINT)
  return `<${name}><xdr:col>${column}</xdr:col><xdr:colOff>${emu(right_pt)}</xdr:colOff><xdr:row>${row}</xdr:row><xdr:rowOff>${emu(down_pt)}</xdr:rowOff></${name}>`
}
