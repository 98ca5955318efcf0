import { noSuchMethod } from '../../methods/index.js'
import { RECALCULATE } from '../cells/interpret.js'
import { type LogProblem, problem } from '../problem.js'
import { stackedView } from './grid/stacked-view.js'
import { unstoredColumn } from './grid/unstored.js'
import type { View } from './grid/view.js'
import type { Answers } from './interpretation.js'
import { methodOfLog } from './record/method.js'
import { findSheetTables } from './sheet-tables.js'

const METHOD = 'test.method'
const CHOOSE =
  'choose a method that needs only one or two readings (on the command line: --set method=astm-e1827-22-one-point)'

/** Why a log gave no readings, and what to do: the likeliest reason alone. */
export function nothingFound(views: readonly View[], answers: Answers): LogProblem {
  const unstored = views.flatMap((view) => unstoredColumn(view) ?? [])[0]
  if (unstored !== undefined) return problem('formula-without-result', RECALCULATE, { cell: unstored })
  const method = answers[METHOD]
  if (method !== undefined && !methodOfLog(answers, views))
    return problem('layout-invalid', noSuchMethod(method.slice(0, 80)), { path: METHOD })
  const single = views.find((view) => stackedView(view, 1))
  if (single)
    return problem(
      'not-found',
      `sheet ${single.name} has one pressure and one air flow, and no table of readings: ${CHOOSE}, or log the readings in columns, each with a heading`,
    )
  const lone = loneReading(views, answers)
  if (lone !== undefined)
    return problem('not-found', `the table has only one reading: ${CHOOSE}, or log more readings`, {
      cell: lone,
      path: METHOD,
    })
  const names = views.map(({ name }) => name).join(', ')
  return problem(
    'not-found',
    `no table of pressures and air flows was found${names ? ` (sheets searched: ${names})` : ''}: log pressures and flows in two columns, each with a heading`,
  )
}

/** The one reading of a table, which only a method of one reading would take. */
function loneReading(views: readonly View[], answers: Answers): string | undefined {
  for (const view of views)
    for (const { block, readings } of findSheetTables(view, answers, () => {}, 1).runs)
      if (block.carriers[0]?.role === 'flow' && readings.length === 1) return readings[0]?.pressure.cell
  return undefined
}
