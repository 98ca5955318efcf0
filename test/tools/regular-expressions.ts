import { execFileSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { parseSync } from 'vite'

/** A regular expression as it stands in the code. */
export interface Found {
  source: string
  flags: string
  /** Files and lines. */
  where: string[]
}

interface SyntaxNode {
  type?: string
  start: number
  regex?: { pattern: string; flags: string }
  callee?: { name?: string }
  arguments?: SyntaxNode[]
  quasis?: { value: { cooked: string } }[]
  value?: unknown
}

/** Every regular expression of the program's files (tests are not part of it), each once. Made ones count by their fixed parts. */
export function regularExpressions(root: string): Found[] {
  const listed = execFileSync('git', ['-C', root, 'ls-files', '*.ts', '*.tsx', '*.mjs'], { encoding: 'utf8' })
  const files = listed.split('\n').filter((file) => file !== '' && !file.startsWith('test/'))
  const found = new Map<string, Found>()
  for (const file of files) {
    const text = readFileSync(`${root}/${file}`, 'utf8')
    const add = (node: SyntaxNode, source: string, flags: string): void => {
      const key = `/${source}/${flags}`
      const where = `${file}:${text.slice(0, node.start).split('\n').length}`
      const before = found.get(key)
      if (before) before.where.push(where)
      else found.set(key, { source, flags, where: [where] })
    }
    for (const node of nodesOf(parseSync(file, text).program as unknown as SyntaxNode)) {
      if (node.regex) add(node, node.regex.pattern, node.regex.flags)
      else if (node.callee?.name === 'RegExp') add(node, fixedParts(node), '')
    }
  }
  return [...found.values()]
}

function* nodesOf(root: SyntaxNode): Iterable<SyntaxNode> {
  const waiting: unknown[] = [root]
  while (waiting.length > 0) {
    const next = waiting.pop()
    if (typeof next !== 'object' || next === null) continue
    if ('type' in next) yield next as SyntaxNode
    for (const child of Object.values(next)) if (typeof child === 'object') waiting.push(child)
  }
}

/** What is put in while the program runs counts as one letter. */
function fixedParts({ arguments: [pattern] = [] }: SyntaxNode): string {
  if (typeof pattern?.value === 'string') return pattern.value
  if (pattern?.quasis) return pattern.quasis.map(({ value }) => value.cooked).join('x')
  throw new Error('a regular expression is made of what cannot be judged')
}
