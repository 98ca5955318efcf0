import type { Direction, OfficialResult } from '../contract/record/index.js'
import { type Block, sourceText } from '../engine/index.js'
import type { OfficialFigure } from '../methods/method.js'
import type { WorkedTest } from './work/worked-test.js'

/** A figure of the method with the block it is read off, once for each run where every run has its own. */
export interface PlacedFigure {
  readonly figure: OfficialFigure
  readonly block: Block<string>
  readonly direction?: Direction
}

/** Where the figures that a method itself reports stand; what lacks its basis is left out. */
export function placedFigures(official: readonly OfficialFigure[], test: WorkedTest): PlacedFigure[] {
  return official.flatMap((figure): PlacedFigure[] => {
    const { from } = figure
    if (from === 'curve' || from === 'standard')
      return test.runs.map((run) => ({ figure, block: run[from], direction: run.direction }))
    if (from === 'reported') return present(figure, test.reported)
    if (from.of === 'run')
      return test.runs.flatMap(({ at, direction }) =>
        present(figure, at.get(from.at_Pa)?.rate).map((placed) => ({ ...placed, direction })),
      )
    const at = test.means.get(from.at_Pa)
    return present(figure, from.of === 'mean' ? at?.rate : at?.[from.of])
  })
}

const present = (figure: OfficialFigure, block: Block<string> | undefined): PlacedFigure[] =>
  block?.has(figure.symbol) ? [{ figure, block }] : []

/** The figures that a method itself reports, with their values. */
export const officialResults = (official: readonly OfficialFigure[], test: WorkedTest): OfficialResult[] =>
  placedFigures(official, test).map(
    ({ figure: { term, symbol, unit, customary, source }, block, direction }) => {
      const value = block.value(symbol)
      return {
        term,
        ...(direction && { direction }),
        value,
        unit,
        ...(customary && { customary: { value: value / customary.inOurs, unit: customary.unit } }),
        source: sourceText(source),
      }
    },
  )
