import { readdirSync, readFileSync } from 'node:fs'
import { figureShapes, PlaneFigure, Solid, solidShapes } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'

const guide = readFileSync('DEVELOPERS.md', 'utf8')

/** First cells of the table below a heading of the guide, as written between backticks. */
function mapped(heading: string): string[] {
  const [, part = ''] = guide.split(`${heading}\n`)
  const table = part.slice(part.indexOf('|')).split(/\n(?!\|)/)[0] ?? ''
  return table
    .split('\n')
    .flatMap((row) => [...(row.split('|')[1] ?? '').matchAll(/`([^`]+)`/g)].map(([, name = '']) => name))
}

const foldersIn = (path: string): string[] =>
  readdirSync(path, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => name)

describe('the map in DEVELOPERS.md', () => {
  it('names every layer of shared-calc/src, and no other', () => {
    const layers = mapped('### Layers of `shared-calc/src`').map((name) => name.replace(/\/$/, ''))
    expect([...layers].sort()).toEqual(foldersIn('shared-calc/src').sort())
  })

  it('says which folders of the repository hold what', () => {
    const named = mapped('## Where things are').map((name) => name.split('/')[0] ?? '')
    const kept = foldersIn('.').filter((name) => !/^(\.|node_modules$|dist$|docs$|pictures$)/.test(name))
    for (const folder of kept) expect(named, `${folder}/ is not on the map`).toContain(folder)
  })

  it('has a rule for each layer that has a layer above it: imports only go down the table', () => {
    const layers = mapped('### Layers of `shared-calc/src`').map((name) => name.replace(/\/$/, ''))
    const { overrides } = JSON.parse(readFileSync('.biome.json', 'utf8')) as {
      overrides: { includes: string[]; linter?: unknown }[]
    }
    for (const layer of layers.slice(1)) {
      const rule = overrides.find(({ includes }) => includes.includes(`shared-calc/src/${layer}/**`))
      // The table stands highest layer first: rerun imports from all, contract from none.
      const above = layers.slice(0, layers.indexOf(layer)).filter((name) => !beside(layer).includes(name))
      for (const name of above) expect(JSON.stringify(rule), `${layer} ← ${name}`).toContain(`**/${name}/**`)
    }
  })
})

/** Layers on one level of the table: methods and targets may look at each other; what is built on them may not. */
const beside = (layer: string): readonly string[] =>
  layer === 'methods' || layer === 'targets' ? ['methods', 'targets'] : []

describe('words that a form offers before the schemas are loaded', () => {
  it('are those of the schema, for solids and plane figures', () => {
    expect(Solid.options.map(({ shape }) => shape.shape.value).sort()).toEqual([...solidShapes].sort())
    expect(PlaneFigure.options.map(({ shape }) => shape.shape.value).sort()).toEqual([...figureShapes].sort())
  })
})
