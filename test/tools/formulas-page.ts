import { constants } from '../../shared-calc/src/catalogue/constants.js'
import { sourceText, symbolText } from '../../shared-calc/src/engine/index.js'
import { formulaList, type ListedFormula } from '../../shared-calc/src/formulas/list.js'

const HEAD = `# Formulas

Generated from \`shared-calc/src/formulas\` by \`npm run formulas\`; do not edit. Each formula stands there once, as data: it is
computed, shown and written into workbooks from there. Flows in m³/h, pressures in Pa. "Value from memory" marks a clause that
nobody has checked against the text of its standard; "derived" what was worked out here and checked numerically.
`

/** The page of all formulas, chapter by chapter, with the constants they use: shared-calc/FORMULAS.md. */
export function formulasPage(): string {
  const chapters = [...byChapter(formulaList())].map(
    ([title, formulas]) => `## ${title}\n\n${fileLine(formulas)}\n\n${formulaTable(formulas)}\n`,
  )
  return [HEAD, `## Constants\n\n${constantTable()}\n`, ...chapters].join('\n')
}

// The chain of one test, in its order; other methods, planning, uncertainty and the rest are on the page of all formulas.
const MAIN = [
  'air.ts',
  'zero-flow.ts',
  'flow-device.ts',
  'leakage-curve.ts',
  'confidence.ts',
  'standard-air.ts',
  'at-reference-pressure.ts',
  'derived.ts',
  'verdict.ts',
]

/** The table in the README: the formulas of an evaluation by ISO 9972. */
export function mainFormulas(): string {
  const all = formulaList()
  const main = all.filter(({ file }) => MAIN.some((name) => file.endsWith(`/${name}`)))
  const rest = `These ${main.length} make up the evaluation of a test; all ${all.length} are in [FORMULAS.md](shared-calc/FORMULAS.md).`
  return `${formulaTable(main)}\n\n${rest}`
}

const START = '<!-- formulas -->'
const END = '<!-- /formulas -->'

/** A text with what stands between its markers replaced. Throws where the markers are missing. */
export function betweenMarkers(text: string, content: string): string {
  const [start, end] = [text.indexOf(START), text.indexOf(END)]
  if (start < 0 || end < start) throw new Error(`the text has no markers ${START} and ${END}`)
  return `${text.slice(0, start + START.length)}\n${content}\n${text.slice(end)}`
}

function byChapter(formulas: readonly ListedFormula[]): Map<string, ListedFormula[]> {
  const chapters = new Map<string, ListedFormula[]>()
  for (const formula of formulas)
    chapters.set(formula.chapter, [...(chapters.get(formula.chapter) ?? []), formula])
  return chapters
}

const fileLine = (formulas: readonly ListedFormula[]): string =>
  [...new Set(formulas.map(({ file }) => file.replace('shared-calc/', '')))]
    .map((file) => `[${file}](${file})`)
    .join(', ')

const code = (text: string): string => `\`${text}\``
const row = (cells: readonly string[]): string =>
  `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`
const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [row(head), row(head.map(() => '---')), ...rows.map(row)].join('\n')

const formulaTable = (formulas: readonly ListedFormula[]): string =>
  table(
    ['Quantity', 'Unit', 'Formula', 'Source'],
    formulas.map(({ symbol, name, unit, expression, source }) => [
      name,
      unit,
      code(`${symbol} = ${expression}`),
      source,
    ]),
  )

const constantTable = (): string =>
  table(
    ['Constant', 'Symbol', 'Value', 'Unit', 'Source'],
    constants.map(({ name, symbol, value, unit, source }) => [
      name,
      code(symbolText(symbol)),
      String(value),
      unit,
      sourceText(source),
    ]),
  )
