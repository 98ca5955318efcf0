import { english } from './english.js'
import { german } from './german.js'
import { other } from './other.js'

export type { Words } from './words.js'

/** Wordings by language and firm. Invented forms; the words are the trade's. */
export const WORDS = {
  form: english.form,
  short: english.short,
  house: english.house,
  american: english.american,
  protocol: german.protocol,
  kurz: german.short,
  ...other,
} as const

export type Wording = keyof typeof WORDS
