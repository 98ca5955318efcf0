import { readFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { constants } from '../../shared-calc/src/catalogue/constants.js'
import { symbolText } from '../../shared-calc/src/engine/index.js'
import { chapters } from '../../shared-calc/src/formulas/list.js'
import { betweenMarkers, formulasPage, mainFormulas } from './formulas-page'

const path = (relative: string) => fileURLToPath(new URL(`../../${relative}`, import.meta.url))

// `npm run formulas` runs this file with --update, which writes what is compared here.
describe('the published formulas are those of the code (else run "npm run formulas")', () => {
  it('in shared-calc/FORMULAS.md', async () => {
    await expect(formulasPage()).toMatchFileSnapshot(path('shared-calc/FORMULAS.md'))
  })

  it('in README.md', async () => {
    const readme = await readFile(path('README.md'), 'utf8')
    await expect(betweenMarkers(readme, mainFormulas())).toMatchFileSnapshot(path('README.md'))
  })
})

describe('the page of formulas', () => {
  it('holds every formula and every constant', () => {
    const page = formulasPage()
    for (const { chapter } of chapters)
      for (const { symbol, name } of chapter.steps) {
        expect(page).toContain(`| ${name} |`)
        expect(page).toContain(`\`${symbolText(symbol)} = `)
      }
    for (const { name, value } of constants)
      expect(page).toMatch(new RegExp(`\\| ${escaped(name)} \\|.*\\| ${value} \\|`))
  })

  it('is refused a place where a text has no markers', () => {
    expect(() => betweenMarkers('# Read me', 'x')).toThrow('no markers')
    expect(betweenMarkers('a <!-- formulas -->old<!-- /formulas --> z', 'new')).toBe(
      'a <!-- formulas -->\nnew\n<!-- /formulas --> z',
    )
  })
})

const escaped = (text: string) => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')
