import type { XmlEvents } from '../../container/xml.js'
import { LIMITS } from '../../limits.js'
import { refuse } from '../../problem.js'
import { type StoredText, TextCollector } from './rich-text.js'

/** Reads xl/sharedStrings.xml: the workbook's texts in order. */
export function stringsEvents(strings: StoredText[]): XmlEvents {
  const collector = new TextCollector()
  return {
    open: (name, attributes) => collector.open(name, attributes),
    text: (text) => collector.text(text),
    close(name) {
      collector.close(name)
      if (name !== 'si') return
      if (strings.length >= LIMITS.strings)
        refuse('too-many-cells', `the workbook holds more than ${LIMITS.strings} separate texts`)
      strings.push(collector.take())
    },
  }
}
