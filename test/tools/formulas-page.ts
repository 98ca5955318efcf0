import { constants } from '../../shared-calc/src/catalogue/constants.js'
import { sourceText, symbolText } from '../../shared-calc/src/engine/index.js'
import { formulaList, type ListedFormula } from '../../shared-calc/src/formulas/list.js'

const HEAD = `# Formulas

Generated from \`shared-calc/src/formulas\` by \`npm run formulas\`; do not edit. Each formula is written there once, as data: it is
computed, shown and written into workbooks from there. Flows in m³/h, pressures in Pa. "Value from memory" marks a clause that
nobody has checked against the text of its standard; "derived" marks a formula derived for this project and checked numerically.
`

/** The page of all formulas, chapter by chapter, with the constants they use: shared-calc/FORMULAS.md. */
export function formulasPage(): string {
  const chapters = [...byChapter(formulaList())].map(
    ([title, formulas]) => `## ${title}\n\n${fileLine(formulas)}\n\n${formulaTable(formulas)}\n`,
  )
  return [HEAD, `## Constants\n\n${constantTable()}\n`, ...chapters].join('\n')
}

// The chain of one test in ten steps; everything else is on the page of all formulas.
const KEY: readonly (readonly [file: string, symbol: string])[] = [
  ['air.ts', 'rho'],
  ['zero-flow.ts', 'dp_m0'],
  ['leakage-curve.ts', 'dp'],
  ['leakage-curve.ts', 'q_env'],
  ['leakage-curve.ts', 'n'],
  ['leakage-curve.ts', 'C_env'],
  ['standard-air.ts', 'C_L'],
  ['at-reference-pressure.ts', 'q_pr'],
  ['derived.ts', 'n_pr'],
  ['verdict.ts', 'A_s'],
]

/** The table in the README: ten formulas of an evaluation by ISO 9972. Throws where one of them is gone. */
export function mainFormulas(): string {
  const all = formulaList()
  const key = KEY.map(([file, symbol]) => {
    const found = all.find((one) => one.file.endsWith(`/${file}`) && one.symbol === symbolText(symbol))
    if (!found) throw new Error(`${file} has no formula ${symbol}`)
    return found
  })
  return `${formulaTable(key)}\n\nAll ${all.length} formulas, with the constants: [FORMULAS.md](shared-calc/FORMULAS.md).`
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
