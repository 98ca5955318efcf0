import { cellText } from '../../catalogue/findings/log/cells.js'
import { likelyPascal, unitOfBuildingPressures } from '../cells/likely-unit.js'
import { type KnownUnit, shown } from '../cells/units.js'
import { writtenIn } from '../cells/written.js'
import { decimalOf } from '../grid/decimal.js'
import { LIMITS } from '../limits.js'
import { findList, type List } from './lists.js'
import { type AssumedUnit, unitOfList } from './look.js'
import type { RunLayout } from './schema.js'
import type { Scope } from './scope.js'

/** What pressures across the building are in where nothing states it: their size may leave one unit only. */
export function likelyOfPressures(scope: Scope, list: List): AssumedUnit | undefined {
  const values = numbersOf(scope, list).map(({ value }) => value)
  const unit = unitOfBuildingPressures(values)
  return unit && { unit, remark: likelyPascal(values) }
}

/** Zero-flow pressures and those of the device are in the unit of the pressures beside them, where they state none. */
export function unitOfRun(
  scope: Scope,
  { pressure }: Pick<RunLayout, 'pressure'>,
  path: string,
): AssumedUnit | undefined {
  const list = findList(scope, pressure.at, path)
  const unit =
    unitOfList(list, 'pressure', pressure.unit, path) ??
    commonUnit(numbersOf(scope, list).map((one) => one.unit)) ??
    likelyOfPressures(scope, list)?.unit
  return (
    unit && {
      unit,
      remark: cellText('log-unit-elsewhere/building', { unit: shown(unit.unit) }),
    }
  )
}

const commonUnit = (units: readonly (KnownUnit | undefined)[]): KnownUnit | undefined =>
  units.every((one) => one?.kind === 'pressure' && one.unit === units[0]?.unit) ? units[0] : undefined

/** The numbers of a list as they stand, each with the unit its cell names. */
export function numbersOf(scope: Scope, list: List): { value: number; unit?: KnownUnit }[] {
  const numbers: { value: number; unit?: KnownUnit }[] = []
  for (let index = 0; index < LIMITS.readings; index++) {
    const place = list.place(index)
    if (!place) break
    const cell = list.sheet.at(place.row, place.column)
    if (!cell && list.open) break
    if (cell?.struck === 'whole') continue
    if (cell?.kind === 'number') numbers.push({ value: Number(cell.value) })
    const written = cell?.kind === 'text' ? writtenIn(String(cell.value), decimalOf(scope.grid)) : undefined
    if (written) numbers.push(written)
  }
  return numbers
}
