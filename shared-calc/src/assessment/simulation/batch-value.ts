import { columnFunctions, scalarFunctions } from '../../engine/evaluate/functions.js'
import type { Expression, Operator } from '../../engine/parse/expression.js'

/** Draws worked out together: small enough that all buffers of a test stay in the processor's cache. */
export const BATCH = 64

/** A number that is the same in all draws, or one a draw. */
export type Batch = number | Float64Array
/** A column: one batch a row. */
export type BatchColumn = readonly Batch[]

/** What is done for each batch of draws, in order; the same work on the same values is done once. */
export class Program {
  readonly loops: (() => void)[] = []
  private readonly done = new Map<string, Float64Array>()
  private readonly names = new Map<Float64Array, number>()

  /** The result of some work: what was laid out before for the same parts, or new loops into a new buffer. */
  once(work: string, parts: readonly Batch[], loop: (out: Float64Array) => () => void): Float64Array {
    const key = `${work} ${parts.map((part) => this.nameOf(part)).join(' ')}`
    const known = this.done.get(key)
    if (known) return known
    const out = new Float64Array(BATCH)
    this.loops.push(loop(out))
    this.done.set(key, out)
    return out
  }

  private nameOf(part: Batch): string {
    if (typeof part === 'number') return String(part)
    const name = this.names.get(part) ?? this.names.size
    this.names.set(part, name)
    return `#${name}`
  }
}

type Places = (symbol: string) => Batch | BatchColumn

/**
 * Lays out the work of an expression for many draws at once: every operator becomes one loop over the draws, and what
 * does not change with the draws is worked out here and now. The expressions are those that the evaluation uses.
 * @param program - receives the loops, in the order in which they must be run
 */
export function layOut(expression: Expression, places: Places, program: Program): Batch | BatchColumn {
  const inner = (part: Expression) => layOut(part, places, program)
  switch (expression.kind) {
    case 'number':
      return expression.value
    case 'symbol':
      return places(expression.symbol)
    case 'brackets':
      return inner(expression.of)
    case 'negative':
      return eachRow([inner(expression.of)], ([of]) => negated(of as Batch, program))
    case 'operator': {
      const { operator, left, right } = expression
      const sign = operator.replace('.', '') as Operator
      return eachRow([inner(left), inner(right)], ([a, b]) => combined(sign, a as Batch, b as Batch, program))
    }
    case 'call':
      return called(expression.name, expression.args.map(inner), program)
  }
}

const isColumn = (value: Batch | BatchColumn): value is BatchColumn => Array.isArray(value)

/** Row by row where any part is a column; a scalar is in every row. */
function eachRow(
  parts: readonly (Batch | BatchColumn)[],
  of: (row: readonly Batch[]) => Batch,
): Batch | BatchColumn {
  const rows = parts.find(isColumn)?.length
  if (rows === undefined) return of(parts as readonly Batch[])
  return Array.from({ length: rows }, (_, row) =>
    of(parts.map((part) => (isColumn(part) ? (part[row] as Batch) : part))),
  )
}

function called(name: string, args: readonly (Batch | BatchColumn)[], program: Program): Batch | BatchColumn {
  const [first] = args
  if (first !== undefined && isColumn(first) && args.length === 1) {
    if (name === 'sum') return total(first, program)
    if (name === 'count') return first.length
    if (name === 'mean') return combined('/', total(first, program), first.length, program)
    const column = columnFunctions[name]
    if (column) return gathered(name, first, column.evaluate, program)
  }
  const scalar = scalarFunctions[name]
  if (!scalar) throw new RangeError(`function ${name} cannot be drawn`)
  return eachRow(args, (row) => applied(name, scalar.evaluate, row, program))
}

function total(column: BatchColumn, program: Program): Batch {
  const constant = column.reduce<number>((sum, row) => (typeof row === 'number' ? sum + row : sum), 0)
  const varying = column.filter((row) => typeof row !== 'number')
  if (varying.length === 0) return constant
  return program.once('sum', [constant, ...varying], (out) => () => {
    out.fill(constant)
    for (const row of varying)
      for (let i = 0; i < BATCH; i += 1) out[i] = (out[i] as number) + (row[i] as number)
  })
}

function gathered(
  name: string,
  column: BatchColumn,
  evaluate: (values: number[]) => number,
  program: Program,
): Batch {
  if (column.every((row) => typeof row === 'number')) return evaluate([...column])
  return program.once(`column ${name}`, column, (out) => () => {
    for (let i = 0; i < BATCH; i += 1)
      out[i] = evaluate(column.map((row) => (typeof row === 'number' ? row : (row[i] as number))))
  })
}

function applied(
  name: string,
  evaluate: (...values: number[]) => number,
  args: readonly Batch[],
  program: Program,
): Batch {
  const [a, b] = args
  if (args.every((arg) => typeof arg === 'number')) return evaluate(...args)
  return program.once(name, args, (out) => {
    if (b === undefined && a instanceof Float64Array) return loopOf(evaluate, a, out)
    return () => {
      for (let i = 0; i < BATCH; i += 1)
        out[i] = evaluate(...args.map((arg) => (typeof arg === 'number' ? arg : (arg[i] as number))))
    }
  })
}

/** The loops of the common functions stand alone, so that each is compiled for its own function. */
function loopOf(evaluate: (...values: number[]) => number, a: Float64Array, out: Float64Array): () => void {
  switch (evaluate) {
    case Math.log:
      return () => {
        for (let i = 0; i < BATCH; i += 1) out[i] = Math.log(a[i] as number)
      }
    case Math.exp:
      return () => {
        for (let i = 0; i < BATCH; i += 1) out[i] = Math.exp(a[i] as number)
      }
    case Math.sqrt:
      return () => {
        for (let i = 0; i < BATCH; i += 1) out[i] = Math.sqrt(a[i] as number)
      }
    default:
      return () => {
        for (let i = 0; i < BATCH; i += 1) out[i] = evaluate(a[i] as number)
      }
  }
}

function negated(a: Batch, program: Program): Batch {
  return combined('-', 0, a, program)
}

function combined(operator: Operator, a: Batch, b: Batch, program: Program): Batch {
  if (typeof a === 'number' && typeof b === 'number') return plain(operator, a, b)
  const same = unchanged(operator, a, b)
  if (same !== undefined) return same
  return program.once(operator, [a, b], (out) => {
    if (typeof a === 'number') return constantLeft(operator, a, b as Float64Array, out)
    return typeof b === 'number' ? constantRight(operator, a, b, out) : bothVary(operator, a, b, out)
  })
}

/** What stays as it is: times or over 1, plus or minus 0. */
function unchanged(operator: Operator, a: Batch, b: Batch): Batch | undefined {
  if ((operator === '*' || operator === '/') && b === 1) return a
  if ((operator === '+' || operator === '-') && b === 0) return a
  if (operator === '*' && a === 1) return b
  return operator === '+' && a === 0 ? b : undefined
}

function plain(operator: Operator, a: number, b: number): number {
  switch (operator) {
    case '+':
      return a + b
    case '-':
      return a - b
    case '*':
      return a * b
    case '/':
      return a / b
    default:
      return a ** b
  }
}

function constantLeft(operator: Operator, a: number, b: Float64Array, out: Float64Array): () => void {
  switch (operator) {
    case '+':
      return () => {
        for (let i = 0; i < BATCH; i += 1) out[i] = a + (b[i] as number)
      }
    case '-':
      return () => {
        for (let i = 0; i < BATCH; i += 1) out[i] = a - (b[i] as number)
      }
    case '*':
      return () => {
        for (let i = 0; i < BATCH; i += 1) out[i] = a * (b[i] as number)
      }
    case '/':
      return () => {
        for (let i = 0; i < BATCH; i += 1) out[i] = a / (b[i] as number)
      }
    default: {
      // A constant above zero to a varying power, as Δp_r to the exponent: the logarithm once for all draws.
      const base = Math.log(a)
      return a > 0
        ? () => {
            for (let i = 0; i < BATCH; i += 1) out[i] = Math.exp(base * (b[i] as number))
          }
        : () => {
            for (let i = 0; i < BATCH; i += 1) out[i] = a ** (b[i] as number)
          }
    }
  }
}

function constantRight(operator: Operator, a: Float64Array, b: number, out: Float64Array): () => void {
  switch (operator) {
    case '+':
      return () => {
        for (let i = 0; i < BATCH; i += 1) out[i] = (a[i] as number) + b
      }
    case '-':
      return () => {
        for (let i = 0; i < BATCH; i += 1) out[i] = (a[i] as number) - b
      }
    case '*':
      return () => {
        for (let i = 0; i < BATCH; i += 1) out[i] = (a[i] as number) * b
      }
    case '/':
      return () => {
        for (let i = 0; i < BATCH; i += 1) out[i] = (a[i] as number) / b
      }
    default:
      return b === 2
        ? () => {
            for (let i = 0; i < BATCH; i += 1) out[i] = (a[i] as number) * (a[i] as number)
          }
        : () => {
            for (let i = 0; i < BATCH; i += 1) out[i] = (a[i] as number) ** b
          }
  }
}

function bothVary(operator: Operator, a: Float64Array, b: Float64Array, out: Float64Array): () => void {
  switch (operator) {
    case '+':
      return () => {
        for (let i = 0; i < BATCH; i += 1) out[i] = (a[i] as number) + (b[i] as number)
      }
    case '-':
      return () => {
        for (let i = 0; i < BATCH; i += 1) out[i] = (a[i] as number) - (b[i] as number)
      }
    case '*':
      return () => {
        for (let i = 0; i < BATCH; i += 1) out[i] = (a[i] as number) * (b[i] as number)
      }
    case '/':
      return () => {
        for (let i = 0; i < BATCH; i += 1) out[i] = (a[i] as number) / (b[i] as number)
      }
    default:
      // Through the logarithm, which is faster, wherever there is one.
      return () => {
        for (let i = 0; i < BATCH; i += 1) {
          const base = a[i] as number
          const power = b[i] as number
          out[i] = base > 0 ? Math.exp(power * Math.log(base)) : base ** power
        }
      }
  }
}
