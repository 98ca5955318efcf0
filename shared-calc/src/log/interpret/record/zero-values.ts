import { runText } from '../../../catalogue/findings/log/runs.js'
import type { KnownUnit } from '../../cells/units.js'
import { blockBetween } from '../../grid/address.js'
import type { FoundRun } from '../tables/runs.js'
import type { Figure } from '../tables/table-row.js'
import type { Assigned } from '../zero-flow/assign.js'
import type { Draft } from './draft.js'

/** Zero-flow pressures as logged, before or after the readings of a run. */
export interface ZeroValues {
  figures: readonly Figure[]
  unit: KnownUnit | undefined
}

/** What a run has of zero flow: in its own table, or by the labels given to it. */
export function zerosOf(
  draft: Draft,
  run: FoundRun,
  zero: Assigned,
): { before?: ZeroValues; after?: ZeroValues } {
  const found = zero.get(run)
  const of = (which: 'before' | 'after'): ZeroValues | undefined => {
    const own = which === 'before' ? run.zeroBefore : run.zeroAfter
    if (own.length > 0 && run.zeroInOrder && which === 'before')
      draft.tell(runText('log-zero-which/in-order'), own[0]?.cell ?? '', 'runs')
    if (own.length > 0) return { figures: own, unit: undefined }
    const entry = found?.[which]
    if (!entry) return undefined
    draft.uses.push({
      cells:
        entry.figures.length > 1
          ? blockBetween(entry.figures[0]?.cell ?? '', entry.figures.at(-1)?.cell ?? '')
          : (entry.figures[0]?.cell ?? ''),
      heading: entry.label,
      usedAs: `zero-flow pressure ${which} the readings`,
    })
    if (found?.shared) draft.tell(runText('log-zero-shared'), entry.labelCell, 'runs')
    if (entry.byOrder)
      draft.tell(runText('log-zero-which/by-order'), entry.figures[0]?.cell ?? entry.labelCell, 'runs')
    if (entry.inOrder && which === 'before')
      draft.tell(runText('log-zero-which/in-order'), entry.labelCell, 'runs')
    if (!entry.which) draft.tell(runText('log-zero-which', { taken: which }), entry.labelCell, 'runs')
    return { figures: entry.figures, unit: entry.unit }
  }
  const before = of('before')
  const after = of('after')
  return { ...(before ? { before } : {}), ...(after ? { after } : {}) }
}

/**
 * Zero-flow pressures in Pa, inside minus outside.
 * @param unit - of the pressures of the run
 * @param headed - what their heading says
 */
export function zeroInPa(
  draft: Draft,
  zero: ZeroValues | undefined,
  unit: KnownUnit,
  sign: number,
  path: string,
  headed?: KnownUnit,
): number[] {
  if (!zero) return []
  // Where the unit of the headings is not that of the readings, the same words over zero flow mean the same.
  const meant = (own: KnownUnit | undefined) => (own && own.unit === headed?.unit ? unit : own)
  return zero.figures.map((figure, index) => {
    const at = `${path}[${index}]`
    if (figure.cell !== '') draft.collector.cells[at] = figure.cell
    const own = meant(figure.unit)
    const written = own && own !== figure.unit ? { ...figure, unit: own } : figure
    const value = draft.quantity(written, meant(zero.unit) ?? unit, figure.cell, at) * sign
    return value === 0 ? 0 : value
  })
}
