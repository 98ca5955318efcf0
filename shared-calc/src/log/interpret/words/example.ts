import { readLabel } from './label.js'

/** "e.g. 350.0", "Bsp.", "p. ex.": how a form is to be filled in. */
const EXAMPLE =
  /^\(?(?:e\.?g|example|z\.?\s?b|bsp|beispiel|p\.?\s?ex|exemple|bijv|bv|voorbeeld|f\.?\s?eks|t\.?\s?ex|ex|eksempel|exempel|por ej|p\.?\s?ej|ejemplo|ad es|esempio|exemplo|np|przyklad|napr|priklad|esim|esimerkki)(?![\p{L}\d])/iu

/** A text that begins with the words for an example. */
export const beginsExample = (text: string): boolean =>
  EXAMPLE.test(text.trim()) || EXAMPLE.test(readLabel(text).padded.trim())
