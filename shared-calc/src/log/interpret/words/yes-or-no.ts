const YES = new Set('yes y ja j oui o si s sim tak ano kylla ok true used ✓ ✔ ☑ ☒ 1'.split(' '))
const NO = new Set('no n nein non nee nej nei nie ne nao ei false ✗ ✘ ☐ 0'.split(' '))

/** What a form answers with one word, in the languages of logs, whatever its accents and case. */
const plain = (text: string): string =>
  text.normalize('NFD').replaceAll(/\p{M}/gu, '').replaceAll(/[.,!]/g, '').trim().toLowerCase()

/** Longer texts are no such word, with some blanks around it. */
const LONGEST = 12

/** "yes", "Ja", "sí", "✓": nothing but that. */
export const saysYes = (text: string): boolean => YES.has(plain(text))

/** "no", "Nein", "não", "✗": nothing but that. */
export const saysNo = (text: string): boolean => NO.has(plain(text))

/** "Zero flow subtracted? | no": what stands beside the text answers it, so it is no label of values below. */
export const isAnswered = (text: string, beside: string | undefined): boolean =>
  text !== '' &&
  beside !== undefined &&
  beside.length <= LONGEST &&
  (text.includes('?') || beside.trim().length > 1) &&
  (saysYes(beside) || saysNo(beside))
