export const XML_HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n'

/** Namespaces of ECMA-376 Part 1 (transitional) and Part 2. */
export const NAMESPACES = {
  chart: 'http://schemas.openxmlformats.org/drawingml/2006/chart',
  drawing: 'http://schemas.openxmlformats.org/drawingml/2006/main',
  sheetDrawing: 'http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing',
  relationships: 'http://schemas.openxmlformats.org/officeDocument/2006/relationships',
  packageRelationships: 'http://schemas.openxmlformats.org/package/2006/relationships',
}

type Attributes = Readonly<Record<string, string | number>>

/** An element with escaped attributes; the content is XML already. */
export function element(name: string, attributes: Attributes = {}, ...content: string[]): string {
  const head = Object.entries(attributes).map(([key, value]) => ` ${key}="${escapeXml(asText(value))}"`)
  const body = content.join('')
  return body ? `<${name}${head.join('')}>${body}</${name}>` : `<${name}${head.join('')}/>`
}

/** The commonest form in chart parts: one `val` attribute. */
export function valued(name: string, value: string | number): string {
  return element(name, { val: value })
}

/** A number as XML Schema's double. Throws RangeError for NaN and infinities, which no reader accepts. */
export function asText(value: string | number): string {
  if (typeof value === 'string') return value
  if (!Number.isFinite(value)) throw new RangeError(`a chart cannot hold the number ${value}`)
  return String(value)
}

/** Escaped for text and attributes. Throws RangeError for characters that XML 1.0 has no way to write. */
export function escapeXml(text: string): string {
  const unsafe = [...text].find((character) => !isXmlCharacter(character.codePointAt(0) ?? 0))
  if (unsafe !== undefined) {
    const code = (unsafe.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')
    throw new RangeError(`the chart text ${JSON.stringify(text)} holds U+${code}, which XML cannot hold`)
  }
  return text.replace(/[&<>"\t\n\r]/g, (character) => ESCAPES[character] ?? character)
}

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  '\t': '&#9;',
  '\n': '&#10;',
  '\r': '&#13;',
}

// Production 2 (Char) of XML 1.0, fifth edition.
function isXmlCharacter(code: number): boolean {
  if (code < 0x20) return code === 0x9 || code === 0xa || code === 0xd
  return code <= 0xd7ff || (code >= 0xe000 && code <= 0xfffd) || code >= 0x10000
}
