import { constants } from '../../shared-calc/src/catalogue/constants.js'
import { columnFunctions, scalarFunctions } from '../../shared-calc/src/engine/evaluate/functions.js'
import { type ChapterDefinition, layOut } from '../../shared-calc/src/engine/parse/layout.js'
import { parseExpression } from '../../shared-calc/src/engine/parse/parse-with-mathjs.js'
import { listed } from '../../shared-calc/src/engine/parse/script.js'
import { toScript } from '../../shared-calc/src/engine/render/to-script.js'
import { chapters } from '../../shared-calc/src/formulas/list.js'

/** The functions of our own that scripts call. */
const called = [...Object.values(scalarFunctions), ...Object.values(columnFunctions)]
  .map(({ script }) => script)
  .filter((name) => !name.startsWith('Math.'))
  .sort()

function scriptOf(definition: ChapterDefinition): string {
  const layout = layOut(definition, constants, parseExpression)
  const steps = layout.steps.map((step) => `      ${JSON.stringify([listed(step), step.expression])},\n`)
  return `  ${JSON.stringify(definition.title)}: {
    constants: ${JSON.stringify(layout.constants.map(({ symbol }) => symbol))},
    inputs: ${JSON.stringify(layout.inputs.map(listed).join(' '))},
    steps: [
${steps.join('')}    ],
    run: ${toScript(layout).replaceAll('\n', '\n    ')},
  },
`
}

/** Every chapter as straight-line code, by its title. */
export const scriptsFile =
  (): string => `// @ts-nocheck: plain JavaScript, written by "npm run formulas" from the formulas of each chapter; do not edit.
// biome-ignore-all lint: nobody reads it as code of ours
// biome-ignore-all format: one line a formula
// biome-ignore-all assist: as written
import {
${called.map((name) => `  ${name},\n`).join('')}} from '../engine/evaluate/functions.js'
import type { Script } from '../engine/index.js'

export const scripts: Readonly<Record<string, Script>> = {
${chapters.map(({ chapter }) => scriptOf(chapter.definition)).join('')}}
`
