import type { Attributes } from '../../container/xml.js'
import { LIMITS } from '../../limits.js'
import { refuse } from '../../problem.js'
import type { Styles } from './styles.js'

interface Piece {
  text: string
  struck: boolean | undefined
}

/**
 * Elements inside a paragraph that hold its text; what is in others (notes, pictures, rulers) is not text of the cell.
 */
const CARRIERS = new Set(['p', 'span', 'a'])
const MOST_SPACES = 1000

/** Collects the paragraphs of one cell, and which pieces of them are struck through. */
export class CellText {
  private pieces: Piece[] = []
  private open_: (boolean | undefined)[] = []
  private foreign = 0
  private paragraphs = 0
  private length = 0
  /** What is in the cell's comment, without its author and day. */
  private noted = ''
  private inNote = 0
  private noteParagraphs = 0

  constructor(private readonly styles: Styles) {}

  open(element: string, attributes: Attributes): void {
    if (this.inNote > 0) {
      this.inNote++
      if (element === 'p' || this.noteParagraphs > 0) this.noteParagraphs++
    } else if (element === 'annotation' && this.foreign === 0) this.inNote = 1
    else if (this.foreign > 0) this.foreign++
    else if (element === 'p' && this.open_.length === 0) {
      if (this.paragraphs++ > 0) this.add('\n')
      this.open_.push(undefined)
    } else if (this.open_.length === 0) this.foreign = 1
    else if (CARRIERS.has(element)) {
      const name = attributes['text:style-name']
      this.open_.push((name === undefined ? undefined : this.styles.struckText(name)) ?? this.open_.at(-1))
    } else {
      if (element === 's') this.add(' '.repeat(Math.min(MOST_SPACES, Number(attributes['text:c'] ?? 1) || 1)))
      else if (element === 'tab') this.add('\t')
      else if (element === 'line-break') this.add('\n')
      this.foreign = 1
    }
  }

  text(text: string): void {
    if (this.noteParagraphs > 0) this.note(text)
    if (this.inNote === 0 && this.foreign === 0 && this.open_.length > 0) this.add(text)
  }

  close(): void {
    if (this.inNote > 0) {
      this.inNote--
      if (this.noteParagraphs > 0) this.noteParagraphs--
    } else if (this.foreign > 0) this.foreign--
    else this.open_.pop()
  }

  take(): { text: string; pieces: readonly Piece[]; comment: string } {
    const pieces = this.pieces
    const comment = this.noted.trim()
    this.noted = ''
    this.pieces = []
    this.paragraphs = 0
    this.length = 0
    return { text: pieces.map((piece) => piece.text).join(''), pieces, comment }
  }

  private note(text: string): void {
    if (this.noted.length < LIMITS.commentCharacters) this.noted += `${text} `
  }

  private add(text: string): void {
    this.length += text.length
    if (this.length > LIMITS.cellCharacters)
      refuse('too-large', `a text is longer than the ${LIMITS.cellCharacters} characters a cell can hold`)
    const struck = this.open_.at(-1)
    const last = this.pieces.at(-1)
    if (last && last.struck === struck) last.text += text
    else this.pieces.push({ text, struck })
  }
}
