import type { z } from 'zod'
import { tableText } from '../../catalogue/findings/log/tables.js'
import type { Direction } from '../../contract/record/index.js'
import type { Collector } from '../collector.js'
import type { PressureSign } from './schema.js'

type Sign = z.infer<typeof PressureSign>

/**
 * A logged pressure difference as inside minus outside. What the layout does not state is not guessed: a sign against
 * the direction of the run is refused, because the zero-flow values would then be of unknown sign too.
 */
export function signed(
  value: number,
  sign: Sign | undefined,
  direction: Direction,
  place: { cell: string; path: string },
  collector: Collector,
): number {
  const expected = direction === 'depressurisation' ? -1 : 1
  if (sign === 'outside minus inside') {
    collector.tell(tableText('log-sign'), place.cell, place.path)
    return value === 0 ? 0 : -value
  }
  if (sign === 'without sign') {
    if (value < 0)
      collector.refuse(
        'ambiguous',
        'the layout says that pressures are logged without a sign, but this one is negative',
        place.cell,
        place.path,
      )
    if (expected > 0 || value === 0) return value
    collector.tell(tableText('log-sign/minus-added'), place.cell, place.path)
    return -value
  }
  if (Math.sign(value) === -expected && sign === undefined) {
    const fault = `${value} Pa has the wrong sign for ${direction}`
    collector.refuse(
      'ambiguous',
      `${fault}: state "sign" of the run in the layout (without it, inside minus outside is assumed)`,
      place.cell,
      place.path,
      { fault },
    )
  }
  return value
}
