/**
 * A formula in the form used for comparing: programs that save a workbook again may write spaces, quotes of sheet
 * names, numbers, truth values, the prefix of newer functions and the case of names differently. Texts in quotes stay.
 */
export function comparableFormula(formula: string): string {
  return formula
    .split(/("(?:[^"]|"")*")/)
    .map((piece, i) => (i % 2 === 1 ? piece : comparablePiece(piece)))
    .join('')
}

const comparablePiece = (piece: string): string =>
  piece
    .replace(/\s+/g, '')
    .replace(/'([A-Za-z_]\w*)'!/g, '$1!')
    .toUpperCase()
    .replaceAll('_XLFN.', '')
    .replace(/\b(TRUE|FALSE)\(\)/g, '$1')
    // A range of one cell is that cell.
    .replace(/(\$?[A-Z]{1,3}\$?\d+):\1(?![\d:])/g, '$1')
    .replace(/(?<![\w.$])(?:\d+(?:\.\d*)?|\.\d+)(?:E[+-]?\d+)?(?![\w.(!])/g, digits)

/** Programs keep 15 digits of a number in a formula. */
const digits = (number: string): string => String(Number(Number(number).toPrecision(DIGITS)))
const DIGITS = 14
