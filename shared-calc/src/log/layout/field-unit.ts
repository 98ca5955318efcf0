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
      assumed(unitOfBarometer(value), (unit) => `${value} can only be ${unit} as the pressure of the air`)
  if (path === INDOOR)
    return (value) => assumed(unitOfRoom(value), (unit) => `${value} indoors can only be ${unit}`)
  if (path === OUTDOOR)
    return (value) => {
      const indoor = indoorNumber(scope, layout)
      const unit = indoor === undefined ? undefined : unitOfRoom(indoor)
      return assumed(
        unit,
        (name) => `${value} outdoors was read as ${name}, because ${indoor} indoors can only be ${name}`,
      )
    }
  if (/RelativeHumidity$/.test(path))
    return (value) =>
      assumed(
        unitOfShare(value),
        (unit) => `${value} was read as ${unit === '%' ? 'per cent' : 'a fraction'}`,
      )
  return undefined
}

const assumed = (unit: KnownUnit | undefined, why: (unit: string) => string): AssumedUnit | undefined =>
  unit && {
    unit,
    remark: {
      severity: 'note',
      rule: 'log-unit-likely',
      message: `no unit is stated; ${why(shown(unit.unit))}`,
    },
  }

/** The indoor temperature as it stands, in whatever unit. */
function indoorNumber(scope: Scope, { fields }: Layout): number | undefined {
  const indoor = fields.find(({ path }) => path === INDOOR)
  if (!indoor) return undefined
  const { sheet, row, column } = locate(scope, indoor.at, INDOOR)
  const cell = sheet.at(row, column)
  if (cell?.kind === 'number') return Number(cell.value)
  return cell?.kind === 'text' ? writtenIn(String(cell.value), undefined)?.value : undefined
}
