/** A label with what follows it: "außen" and "8 °C". */
export interface Piece {
  readonly label: string
  readonly rest: string
}

/** What says "about" in front of a number. */
const ABOUT = /(?:[:=~≈]|\b(?:ca|circa|approx|env|about|is|was|war|ist)\b\.?)\s*$/i

/**
 * The values of a line written as a sentence: "Volume 320 m³, inside 20 °C, outside 8 °C". A comma between figures parts no values.
 * Empty where fewer than two pieces hold a label and a number.
 */
export function piecesOf(text: string): Piece[] {
  const pieces = text.split(/[;|]|,(?!\d)|\s\/\s|\s{2,}|\s[–—-]\s/).flatMap((piece): Piece[] => {
    const digit = piece.search(/\d/)
    if (digit <= 0) return []
    const from = '-−–+'.includes(piece[digit - 1] as string) ? digit - 1 : digit
    let label = piece.slice(0, from).trim()
    for (let again = 0; again < 3 && ABOUT.test(label); again++) label = label.replace(ABOUT, '').trim()
    return label === '' || label.length > 40 ? [] : [{ label, rest: piece.slice(from).trim() }]
  })
  return pieces.length >= 2 ? pieces : []
}
