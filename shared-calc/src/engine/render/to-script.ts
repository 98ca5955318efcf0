import { columnFunctions, scalarFunctions } from '../evaluate/functions.js'
import { gathersColumn, type Slots } from '../parse/columns.js'
import { type Expression, FormulaError, type Operator } from '../parse/expression.js'
import type { Layout, Step } from '../parse/layout.js'

/**
 * A chapter as the text of a function: straight-line JavaScript that fills the slots of its formulas from those of its
 * constants and inputs. It is written when the project is built, so that nothing evaluates text when it runs.
 * Numbers come out as by the formulas read one by one: sums are added up in the order of the rows.
 */
export function toScript({ constants, inputs, steps, slots }: Layout): string {
  // An input may be called as a constant is, which it then stands for.
  const given = new Set([...constants, ...inputs].map(({ symbol }) => symbol))
  const lines = [...given].map((symbol) => taken(symbol, slots))
  const body = new Body(slots)
  for (const step of steps) body.add(step)
  const rows = [...slots.values()].some((slot) => slot.rows) ? 'scalars, columns, rows' : 'scalars'
  return `(${rows}) => {\n${[...lines, ...body.finished()].map((line) => `  ${line}`).join('\n')}\n}`
}

/** Symbols may be called as parameters are: none of those begins with a dollar. */
const named = (symbol: string): string => `$${symbol}`

function taken(symbol: string, slots: Slots): string {
  const slot = slots.get(symbol)
  return slot?.rows
    ? `const ${named(symbol)} = columns[${slot.index}]`
    : `const ${named(symbol)} = scalars[${slot?.index}]`
}

/** The statements of a chapter. Columns that follow one another share a loop over the rows. */
class Body {
  private readonly lines: string[] = []
  private loop: string[] = []
  private sums = 0

  constructor(private readonly slots: Slots) {}

  add({ symbol, tree, rows }: Step): void {
    const index = this.slots.get(symbol)?.index
    const name = named(symbol)
    // What is written here goes before the loop that is open, which is closed by whatever needs one of its columns whole.
    const value = this.value(tree)
    if (rows) {
      this.lines.push(`const ${name} = []`, `columns[${index}] = ${name}`)
      this.loop.push(`${name}.push(${value})`)
    } else this.lines.push(`const ${name} = ${value}`, `scalars[${index}] = ${name}`)
  }

  finished(): readonly string[] {
    this.close()
    return this.lines
  }

  /** The text of an expression's value; what it sums is added up before it. */
  private value(expression: Expression): string {
    const inner = (part: Expression) => this.value(part)
    switch (expression.kind) {
      case 'number':
        return String(expression.value)
      case 'symbol':
        return this.slots.get(expression.symbol)?.rows
          ? `${named(expression.symbol)}[i]`
          : named(expression.symbol)
      case 'brackets':
        return inner(expression.of)
      case 'negative':
        return `(-${inner(expression.of)})`
      case 'operator':
        return `(${inner(expression.left)} ${inScript(expression.operator)} ${inner(expression.right)})`
      case 'call':
        return this.called(expression.name, expression.args)
    }
  }

  private called(name: string, args: readonly Expression[]): string {
    const [first] = args
    if (first && gathersColumn(name, args, this.slots)) {
      if (name === 'sum') return this.sum(first)
      this.close()
      if (first.kind === 'symbol') return `${columnFunctions[name]?.script}(${named(first.symbol)})`
    }
    const scalar = scalarFunctions[name]
    if (!scalar) throw new FormulaError(`function ${name} is unknown`)
    return `${scalar.script}(${args.map((arg) => this.value(arg)).join(', ')})`
  }

  private sum(term: Expression): string {
    const value = this.value(term)
    this.close()
    this.sums += 1
    const name = `sum${this.sums}`
    this.lines.push(`let ${name} = 0`, `for (let i = 0; i < rows; i += 1) ${name} += ${value}`)
    return name
  }

  private close(): void {
    if (this.loop.length === 0) return
    this.lines.push('for (let i = 0; i < rows; i += 1) {', ...this.loop.map((line) => `  ${line}`), '}')
    this.loop = []
  }
}

const inScript = (operator: Operator): string => operator.replace('.', '').replace('^', '**')
