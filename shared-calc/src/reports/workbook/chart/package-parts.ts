import { type Parts, setText, textOf } from '../zip/parts.js'
import { appendToRoot, attributesOf, relationshipsOf } from './relationships.js'
import { element } from './xml.js'

const CONTENT_TYPES = '[Content_Types].xml'

/** Sheet name → worksheet part, in the order of the workbook. Throws RangeError when there is no workbook part. */
export function sheetParts(parts: Parts): Map<string, string> {
  const workbook = relationshipsOf(parts, '').find(({ type }) => type.endsWith('/officeDocument'))?.target
  if (!workbook) throw new RangeError('the package names no workbook part')
  const targets = new Map(relationshipsOf(parts, workbook).map(({ id, target }) => [id, target]))
  const sheets = attributesOf(textOf(parts, workbook), 'sheet')
  return new Map(sheets.map(({ name = '', id = '' }) => [name, targets.get(id) ?? '']))
}

/** Adds a part under the first free number, such as xl/charts/chart2.xml, with its content type; returns its path. */
export function addNumberedPart(parts: Parts, stem: string, contentType: string, text: string): string {
  let number = 1
  while (parts.has(`${stem}${number}.xml`)) number += 1
  const path = `${stem}${number}.xml`
  setText(parts, path, text)
  const override = element('Override', { PartName: `/${path}`, ContentType: contentType })
  setText(parts, CONTENT_TYPES, appendToRoot(textOf(parts, CONTENT_TYPES), override, CONTENT_TYPES))
  return path
}
