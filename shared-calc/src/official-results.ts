import type { OfficialFigure } from './methods/method.js'
import type { OfficialResult } from './record/index.js'
import { type Block, sourceText } from './sheet/index.js'
import type { WorkedTest } from './work/worked-test.js'

/** The figures that a method itself reports, read off their blocks; what lacks its basis is left out. */
export function officialResults(official: readonly OfficialFigure[], test: WorkedTest): OfficialResult[] {
  return official.flatMap((figure) => {
    const { from } = figure
    if (from === 'curve' || from === 'standard')
      return test.runs.map((run) => ({ ...result(figure, run[from]), direction: run.direction }))
    if (from === 'reported') return present(figure, test.reported)
    const at = test.means.get(from.at_Pa)
    return present(figure, from.of === 'mean' ? at?.rate : at?.derived)
  })
}

const present = (figure: OfficialFigure, block: Block | undefined): OfficialResult[] =>
  block?.has(figure.symbol) ? [result(figure, block)] : []

function result({ term, symbol, unit, customary, source }: OfficialFigure, block: Block): OfficialResult {
  const value = block.value(symbol)
  return {
    term,
    value,
    unit,
    ...(customary && { customary: { value: value / customary.inOurs, unit: customary.unit } }),
    source: sourceText(source),
  }
}
