import { toRecordUnit } from '../../cells/units.js'
import { type Label, says } from '../words/label.js'
import type { KnownColumn } from './columns.js'
import type { WalkedRows } from './table-row.js'

/** Points for a column being the pressure across the envelope. */
export function pressurePrior({ label, unit, role }: KnownColumn, { rows }: WalkedRows): number {
  const values = rows.filter(({ kind }) => kind === 'reading').map(({ pressure }) => pressure.value)
  const inPa = unit?.kind === 'pressure' ? values.map((value) => toRecordUnit(value, unit)) : values
  const usual = inPa.every((value) => Math.abs(value) >= 3 && Math.abs(value) <= 150)
  return (
    (role === 'pressure' ? 2 : role === 'induced' ? 1 : 0) +
    (says(label, 'building') ? 2 : 0) +
    (says(label, 'pressure') ? 0.5 : 0) +
    (unit ? 0.5 : 0) +
    (values.some((value) => value < 0) ? 1.5 : 0) +
    (usual ? 0.5 : -1) -
    (isExtreme(label) ? OF_EXTREMES : 0)
  )
}

/** Points for a column being the flow as the instrument showed it. */
export const flowPrior = ({ label, unit, at }: KnownColumn): number =>
  2 +
  (says(label, 'flow') ? 0.6 : 0) +
  (unit ? 0.6 : 0) +
  (says(label, 'asShown') ? 1 : 0) -
  (says(label, 'average') ? 1.5 : 0) -
  (isExtreme(label) ? OF_EXTREMES : 0) -
  at * 0.001

/** "p min | p max | p mean": so many points a least or greatest value is worth less than the mean beside it. */
const OF_EXTREMES = 4

/** "Min. / max. / mean" names the mean too. */
const isExtreme = (label: Label): boolean => says(label, 'extreme') && !says(label, 'mean')
