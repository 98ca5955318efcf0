import type { Attributes, XmlEvents } from '../../container/xml.js'
import { LIMITS } from '../../limits.js'
import { refuse } from '../../problem.js'

/** A piece of a cell's text; `struck` undefined: as the cell's own font. */
interface TextRun {
  text: string
  struck: boolean | undefined
}

/**
 * A text with formats of its own. Many cells may hold the same one, so its runs are joined once and not again for every cell.
 */
export interface RichText {
  text: string
  /** What is not struck through, by whether the cell's own font is struck. */
  unstruck: { inStruckCell: string; inPlainCell: string }
}

/** Plain text, or one with formats of its own. */
export type StoredText = string | RichText

/** Collects the text of an <si> or <is> element: `t` with runs `r`, without phonetic hints `rPh`. */
export class TextCollector {
  private runs: TextRun[] = []
  private rich = false
  private inText = false
  private phonetic = 0
  private struck: boolean | undefined

  open(name: string, attributes: Attributes): void {
    if (name === 'rPh') this.phonetic++
    else if (name === 'r') this.struck = undefined
    else if (name === 'rPr') this.struck = false
    else if (name === 'strike') this.struck = isOn(attributes)
    else if (name === 't' && this.phonetic === 0) {
      this.inText = true
      this.runs.push({ text: '', struck: this.struck })
      if (this.struck !== undefined) this.rich = true
    }
  }

  text(text: string): void {
    const run = this.runs.at(-1)
    if (this.inText && run) run.text += text
  }

  close(name: string): void {
    if (name === 'rPh') this.phonetic--
    else if (name === 't') this.inText = false
  }

  take(): StoredText {
    const [only] = this.runs
    if (only && this.runs.length === 1 && !this.rich) {
      this.runs = []
      this.struck = undefined
      return unescapeText(only.text)
    }
    const runs = this.runs.map((run) => ({ ...run, text: unescapeText(run.text) }))
    const text = joined(runs)
    const result = this.rich ? { text, unstruck: unstruckOf(runs) } : text
    this.runs = []
    this.rich = false
    this.struck = undefined
    return result
  }
}

const joined = (runs: readonly TextRun[]): string => runs.map((run) => run.text).join('')

const unstruckOf = (runs: readonly TextRun[]): RichText['unstruck'] => ({
  inStruckCell: joined(runs.filter(({ struck }) => struck === false)),
  inPlainCell: joined(runs.filter(({ struck }) => !struck)),
})

/** An on/off element is on unless it says 0 or false (ECMA-376, CT_BooleanProperty). */
export function isOn(attributes: Attributes): boolean {
  return attributes.val !== '0' && attributes.val !== 'false'
}

/** `_x000D_` stands for a character XML cannot hold (ECMA-376, ST_Xstring). */
export function unescapeText(text: string): string {
  if (!text.includes('_x')) return text
  return text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, code: string) =>
    String.fromCharCode(Number.parseInt(code, 16)),
  )
}

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
