import { fieldText } from '../../catalogue/findings/log/fields.js'
import type { Remark } from '../../catalogue/findings/remark.js'
import { unitOfBarometer, unitOfRoom, unitOfShare } from '../cells/likely-unit.js'
import { type KnownUnit, shown } from '../cells/units.js'
import { writtenIn } from '../cells/written.js'
import { locate } from './locate.js'
import type { AssumedUnit } from './look.js'
import type { Layout } from './schema.js'
import type { Scope } from './scope.js'

const INDOOR = 'conditions.indoorTemperature_C'
const OUTDOOR = 'conditions.outdoorTemperature_C'
const BAROMETER = 'conditions.barometricPressure_Pa'

/** The unit of a single value that states none, where its size, or the room's temperature, leaves only one. */
export function likelyOfField(
  scope: Scope,
  layout: Layout,
  path: string,
): ((value: number) => AssumedUnit | undefined) | undefined {
  if (path === BAROMETER)
    return (value) =>
      assumed(unitOfBarometer(value), (unit) => fieldText('log-unit-likely/barometer', { value, unit }))
  if (path === INDOOR) return (value) => assumed(unitOfRoom(value), (unit) => temperature(value, true, unit))
  if (path === OUTDOOR)
    return (value) => {
      const indoors = indoorNumber(scope, layout)
      if (indoors === undefined) return undefined
      return assumed(unitOfRoom(indoors), (unit) => temperature(value, false, unit))
    }
  if (/RelativeHumidity$/.test(path))
    return (value) =>
      assumed(unitOfShare(value), (unit) =>
        fieldText('log-unit-likely/humidity', { value, share: unit !== '%' }),
      )
  return undefined
}

const temperature = (value: number, indoors: boolean, unit: string): Remark =>
  fieldText('log-unit-likely/temperature', {
    value,
    indoors,
    ...(unit === '°C' ? { unit: '°C', other: '°F' } : { unit: '°F', other: '°C' }),
  })

const assumed = (unit: KnownUnit | undefined, remark: (unit: string) => Remark): AssumedUnit | undefined =>
  unit && { unit, remark: remark(shown(unit.unit)) }

/** The indoor temperature as it stands, in whatever unit. */
function indoorNumber(scope: Scope, { fields }: Layout): number | undefined {
  const indoor = fields.find(({ path }) => path === INDOOR)
  if (!indoor) return undefined
  const { sheet, row, column } = locate(scope, indoor.at, INDOOR)
  const cell = sheet.at(row, column)
  if (cell?.kind === 'number') return Number(cell.value)
  return cell?.kind === 'text' ? writtenIn(String(cell.value), undefined)?.value : undefined
}
