import { FormulaError } from './expression.js'

export interface Dependent {
  readonly symbol: string
  readonly uses: ReadonlySet<string>
}

/**
 * Orders formulas so that each stands after all it uses.
 * @throws FormulaError naming every symbol of a cycle, or the unknown symbol and the formula that uses it
 */
export function orderByUse<T extends Dependent>(formulas: readonly T[], known: ReadonlySet<string>): T[] {
  const bySymbol = new Map(formulas.map((formula) => [formula.symbol, formula]))
  if (bySymbol.size !== formulas.length) throw new FormulaError(`symbol ${twice(formulas)} is defined twice`)
  const done = new Set<string>()
  const ordered: T[] = []
  const visit = (formula: T, trail: readonly string[]): void => {
    if (done.has(formula.symbol)) return
    const start = trail.indexOf(formula.symbol)
    if (start >= 0)
      throw new FormulaError(
        `formulas go in a circle: ${[...trail.slice(start), formula.symbol].join(' → ')}`,
      )
    for (const symbol of formula.uses) {
      const used = bySymbol.get(symbol)
      if (used) visit(used, [...trail, formula.symbol])
      else if (!known.has(symbol))
        throw new FormulaError(`formula ${formula.symbol} uses the unknown symbol ${symbol}`)
    }
    done.add(formula.symbol)
    ordered.push(formula)
  }
  for (const formula of formulas) visit(formula, [])
  return ordered
}

const twice = (formulas: readonly Dependent[]): string =>
  formulas.map((f) => f.symbol).find((symbol, i, all) => all.indexOf(symbol) !== i) ?? ''
