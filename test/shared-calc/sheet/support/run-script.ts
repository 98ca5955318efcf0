import { constants } from '../../../../shared-calc/src/catalogue/constants.js'
import * as functions from '../../../../shared-calc/src/engine/evaluate/functions.js'
import {
  type Chapter,
  type ChapterDefinition,
  chapterOf,
  type Script,
} from '../../../../shared-calc/src/engine/index.js'
import { type Layout, layOut } from '../../../../shared-calc/src/engine/parse/layout.js'
import { parseExpression } from '../../../../shared-calc/src/engine/parse/parse-with-mathjs.js'
import { listed, type Run } from '../../../../shared-calc/src/engine/parse/script.js'
import { toScript } from '../../../../shared-calc/src/engine/render/to-script.js'

const names = Object.keys(functions)

/** A layout's script made to run here and now; the project itself runs only scripts that were written when it was built. */
export const runOf = (layout: Layout): Run =>
  new Function(...names, `return ${toScript(layout)}`)(...Object.values(functions)) as Run

/** The script of a chapter that the project does not have. */
export function scriptOf(definition: ChapterDefinition, known = constants): Script {
  const layout = layOut(definition, known, parseExpression)
  return {
    constants: layout.constants.map(({ symbol }) => symbol),
    inputs: layout.inputs.map(listed).join(' '),
    steps: layout.steps.map((step) => [listed(step), step.expression] as const),
    run: runOf(layout),
  }
}

/** A chapter that the project does not have. */
export const chapterFrom = <F extends string, I extends string>(
  definition: ChapterDefinition<F, I>,
  known = constants,
): Chapter<F | I, I> => chapterOf(definition, known, parseExpression, () => scriptOf(definition, known))
