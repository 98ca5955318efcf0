import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseSync } from 'vite'
import { describe, expect, it } from 'vitest'
import { coinedPhrases, slips } from '../shared-calc/findings/coined-phrases'

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

/** The words that the guide's table of terms gives up, each for the term of its row. */
const dropped = (readFileSync('DEVELOPERS.md', 'utf8').split('### Terms\n')[1] ?? '')
  .split(/\n## /, 1)
  .flatMap((part) => part.split('\n'))
  .filter((line) => line.startsWith('| ') && !line.startsWith('| term'))
  .flatMap((line) => {
    const [, term = '', , words = ''] = line.split('|').map((cell) => cell.trim())
    return words.split(', ').map((word) => [word, term] as const)
  })

describe('text in the source', () => {
  it('has straight quotation marks alone, as people type and search for them', () => {
    expect(all.filter((text) => /[“”„]/.test(text))).toEqual([])
  })

  it('is found in strings, templates and tags', () => {
    expect(files.length).toBeGreaterThan(500)
    expect(all.length).toBeGreaterThan(3000)
    expect(all.filter((text) => text.includes('still to seal')).length).toBeGreaterThan(1)
  })

  it.each(coinedPhrases.map((phrase) => [phrase] as const))('nowhere says %s', (phrase) => {
    expect(all.filter((text) => phrase.test(text.replace(/^.*?: /, '')))).toEqual([])
  })

  it.each(slips.map((slip) => [slip] as const))('has no slip like %s', (slip) => {
    expect(all.filter((text) => slip.test(text.replace(/^.*?: /, '')))).toEqual([])
  })

  it('is held to the table of terms in the guide', () => {
    expect(dropped.length).toBeGreaterThan(20)
  })

  it.each(dropped)('does not say "%s" for "%s"', (word) => {
    const phrase = new RegExp(`\\b${word}s?\\b`, 'i')
    expect(all.filter((text) => phrase.test(text.replace(/^.*?: /, '')))).toEqual([])
  })
})
