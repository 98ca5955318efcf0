import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseSync } from 'vite'
import { describe, expect, it } from 'vitest'
import { coinedPhrases, droppedTerms } from '../shared-calc/findings/coined-phrases'

/** Frozen versions stay as issued; generated files and the dictionary of words that logs use are not prose. */
const LEFT_OUT = /\/versions\/frozen\/|interpret\/words\/|\.generated\.ts$/

const files = ['shared-calc/src', 'service/src', 'addin/src'].flatMap((start) =>
  readdirSync(start, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))
    .filter((file) => !LEFT_OUT.test(file)),
)

interface Node {
  readonly type?: string
  readonly value?: unknown
  readonly start?: number
}

/** Text a person may read: strings, parts of templates and text between tags; a string without a space is a name. */
function texts(file: string): string[] {
  const found: string[] = []
  const visit = (node: unknown): void => {
    if (typeof node !== 'object' || node === null) return
    const { type, value, start = 0 } = node as Node
    const text = type === 'TemplateElement' ? (value as { cooked?: string }).cooked : value
    if (['Literal', 'JSXText', 'TemplateElement'].includes(type ?? '') && typeof text === 'string') {
      const said = text.replace(/\s+/g, ' ').trim()
      if (said.includes(' ')) found.push(`${file} (character ${start}): ${said}`)
    }
    for (const child of Object.values(node)) visit(child)
  }
  visit(parseSync(file, readFileSync(file, 'utf8')).program)
  return found
}

const all = files.flatMap(texts)

describe('text in the source', () => {
  it('is found in strings, templates and tags', () => {
    expect(files.length).toBeGreaterThan(500)
    expect(all.length).toBeGreaterThan(3000)
    expect(all.filter((text) => text.includes('still to seal')).length).toBeGreaterThan(1)
  })

  it.each([...coinedPhrases, ...droppedTerms].map((phrase) => [phrase] as const))(
    'nowhere says %s',
    (phrase) => {
      expect(all.filter((text) => phrase.test(text.replace(/^.*?: /, '')))).toEqual([])
    },
  )
})
