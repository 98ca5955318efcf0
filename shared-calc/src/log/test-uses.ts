import { placeWords } from '../contract/record/index.js'
import { blockBetween } from './grid/address.js'
import type { Use } from './interpret/interpretation.js'

const ROLES: Readonly<Record<string, string>> = {
  pressure_Pa: 'pressure across the building',
  flow_m3_h: 'air flow',
  devicePressure_Pa: 'device pressure',
  range: 'range of the device',
  zeroFlowBefore_Pa: 'zero-flow pressure before the readings',
  zeroFlowAfter_Pa: 'zero-flow pressure after the readings',
  averagingTime_s: 'averaging time',
}

/** What the cells of a test that was read by a layout are: one use for each field, one for each column of readings. */
export function testUses(cells: Readonly<Record<string, string>>): Use[] {
  const uses = new Map<string, Use>()
  for (const [path, cell] of Object.entries(cells)) {
    const column = path.replaceAll(/(readings|zeroFlowBefore_Pa|zeroFlowAfter_Pa)\[\d{1,6}\]/g, '$1[]')
    const known = uses.get(column)
    uses.set(column, {
      cells: known ? blockBetween(known.cells.split(':')[0] ?? '', cell) : cell,
      heading: '',
      usedAs: column.startsWith('runs[') ? roleOf(column) : placeWords(path, {}),
      path: column,
    })
  }
  return [...uses.values()]
}

function roleOf(column: string): string {
  const run = `run ${Number(/\d/.exec(column)?.[0] ?? 0) + 1}`
  const last = column.split('.').at(-1)?.replace('[]', '') ?? ''
  return `${ROLES[last] ?? last}, ${run}`
}
