const greek: Readonly<Record<string, string>> = {
  alpha: 'α',
  delta: 'δ',
  Delta: 'Δ',
  dp: 'Δp',
  dq: 'Δq',
  mu: 'μ',
  nu: 'ν',
  phi: 'φ',
  pi: 'π',
  rho: 'ρ',
  sigma: 'σ',
  theta: 'θ',
  xbar: 'x̄',
  ybar: 'ȳ',
  lnC: 'ln C',
}

export interface SymbolParts {
  readonly base: string
  readonly subscript?: string
}

/** Splits `rho_i` into ρ and i, for print. */
export function symbolParts(symbol: string): SymbolParts {
  const [head = '', ...rest] = symbol.split('_')
  const base = greek[head] ?? head
  return rest.length === 0 ? { base } : { base, subscript: rest.join(',') }
}

/** The symbol in one line of plain text: ρ_i. */
export function symbolText(symbol: string): string {
  const { base, subscript } = symbolParts(symbol)
  return subscript === undefined ? base : `${base}_${subscript}`
}
