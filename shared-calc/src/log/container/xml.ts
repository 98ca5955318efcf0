import { SaxesParser } from 'saxes'
import { LIMITS } from '../limits.js'
import { LogError, refuse } from '../problem.js'

export type Attributes = Record<string, string>

export interface XmlEvents {
  /** Element names come without their namespace prefix: writers differ in it. It is given last, empty where there is none. */
  open(name: string, attributes: Attributes, prefix?: string): void
  close(name: string): void
  text(text: string): void
}

/**
 * A strict XML reader fed piece by piece. Document types (the door to entity expansion) and deep nesting are refused.
 * @param part - the part's name, for the error's text
 * @throws LogError `document-type`, `damaged-file`
 */
export function xmlReader(part: string, events: XmlEvents): { write(text: string): void; end(): void } {
  const parser = new SaxesParser({ position: false })
  let depth = 0
  let elements = 0
  parser.on('doctype', () =>
    refuse('document-type', `the part ${part} declares a document type, which no workbook needs`),
  )
  parser.on('opentag', (tag) => {
    if (++depth > LIMITS.xmlDepth) refuse('damaged-file', `the part ${part} nests its elements too deeply`)
    if (++elements > LIMITS.xmlElements)
      refuse('too-many-cells', `the part ${part} holds more than ${LIMITS.xmlElements} elements`)
    const name = localName(tag.name)
    const prefix = name.length < tag.name.length ? tag.name.slice(0, -name.length - 1) : ''
    events.open(name, tag.attributes as Attributes, prefix)
  })
  parser.on('closetag', (tag) => {
    depth--
    events.close(localName(tag.name))
  })
  parser.on('text', (text) => events.text(text))
  parser.on('cdata', (text) => events.text(text))
  parser.on('error', () => refuse('damaged-file', `the part ${part} is not well-formed XML`))
  return {
    write: (text) => shielded(part, () => parser.write(text)),
    end: () => shielded(part, () => parser.close()),
  }
}

function localName(name: string): string {
  const colon = name.indexOf(':')
  return colon < 0 ? name : name.slice(colon + 1)
}

function shielded(part: string, run: () => unknown): void {
  try {
    run()
  } catch (error) {
    if (error instanceof LogError) throw error
    refuse('damaged-file', `the part ${part} is not well-formed XML`)
  }
}
