import { type Parts, setText, textOf } from '../zip/parts.js'
import { addNumberedPart } from './package-parts.js'
import { addRelationship, relationshipsOf } from './relationships.js'
import { element, NAMESPACES, XML_HEAD } from './xml.js'

const DRAWING_TYPE = 'application/vnd.openxmlformats-officedocument.drawing+xml'

// What may be after `drawing` in a worksheet (CT_Worksheet, ECMA-376 Part 1, 18.3.1.99).
const AFTER_DRAWING =
  /^(drawingHF|legacyDrawing|legacyDrawingHF|picture|oleObjects|controls|webPublishItems|tableParts|extLst)$/
const TAG =
  /<!--[\s\S]*?-->|<!\[CDATA\[[\s\S]*?\]\]>|<\?[\s\S]*?\?>|<(\/?)(?:[\w.-]+:)?([\w.-]+)((?:[^>"']|"[^"]*"|'[^']*')*?)(\/?)>/g

/** Drawing part of a worksheet; makes an empty one, tied to the sheet, where there is none. */
export function drawingOf(parts: Parts, sheet: string): string {
  const xml = textOf(parts, sheet)
  const place = drawingPlace(xml, sheet)
  if (place.relationship !== undefined) {
    const found = relationshipsOf(parts, sheet).find(({ id }) => id === place.relationship)
    if (!found) throw new RangeError(`${sheet} refers to a drawing ${place.relationship} that is not there`)
    return found.target
  }
  const root = { 'xmlns:xdr': NAMESPACES.sheetDrawing, 'xmlns:a': NAMESPACES.drawing }
  const empty = XML_HEAD + element('xdr:wsDr', root, '\n')
  const path = addNumberedPart(parts, 'xl/drawings/drawing', DRAWING_TYPE, empty)
  const id = addRelationship(parts, sheet, 'drawing', path)
  const link = element(`${place.prefix}drawing`, { 'xmlns:r': NAMESPACES.relationships, 'r:id': id })
  setText(parts, sheet, xml.slice(0, place.at) + link + xml.slice(place.at))
  return path
}

/** Where `drawing` is or belongs. Only the part after the cells is walked, whatever the size of the sheet. */
function drawingPlace(xml: string, sheet: string): { at: number; prefix: string; relationship?: string } {
  const end = /<\/((?:[\w.-]+:)?)worksheet\s*>\s*$/.exec(xml)
  const cells = Math.max(xml.lastIndexOf('sheetData>'), xml.lastIndexOf('sheetData/>'))
  if (!end || cells < 0) throw new RangeError(`${sheet} is not a worksheet`)
  const prefix = end[1] ?? ''
  let depth = 0
  TAG.lastIndex = xml.indexOf('>', cells) + 1
  for (let tag = TAG.exec(xml); tag && tag.index < end.index; tag = TAG.exec(xml)) {
    const [, closing, name = '', attributes = '', empty] = tag
    if (depth === 0 && name === 'drawing') {
      return { at: tag.index, prefix, relationship: /:id\s*=\s*["']([^"']*)/.exec(attributes)?.[1] ?? '' }
    }
    if (depth === 0 && AFTER_DRAWING.test(name)) return { at: tag.index, prefix }
    if (closing) depth -= 1
    else if (name && !empty) depth += 1
  }
  return { at: end.index, prefix }
}
