import type { XmlEvents } from '../../container/xml.js'
import { parseAddress } from '../address.js'
import type { CellStore } from '../cell-store.js'
import { TextCollector, unescapeText } from './rich-text.js'

/** Reads the comments of a sheet (ECMA-376 part 1, 18.7) into its store. */
export function commentEvents(store: CellStore): XmlEvents {
  const collector = new TextCollector()
  let place: { row: number; column: number } | undefined
  let inside = false
  return {
    open(name, attributes) {
      if (name === 'comment') place = parseAddress(attributes.ref ?? '')
      else if (name === 'text' && !inside) inside = true
      else if (inside) collector.open(name, attributes)
    },
    text(text) {
      if (inside) collector.text(text)
    },
    close(name) {
      if (name === 'text' && inside) {
        inside = false
        const stored = collector.take()
        const said = ownWords(unescapeText(typeof stored === 'string' ? stored : stored.text))
        if (place && said !== '') store.comment(place.row, place.column, said)
      } else if (inside) collector.close(name)
    },
  }
}

/** A threaded comment is kept a second time here, behind a sentence of the program's own and the word "Comment:". */
function ownWords(text: string): string {
  const own = text.startsWith('[Threaded comment]') ? text.slice(text.indexOf('Comment:') + 8) : text
  return own.trim()
}
