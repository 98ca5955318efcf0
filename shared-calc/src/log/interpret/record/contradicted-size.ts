import { questions } from '../../../catalogue/questions.js'
import type { TestRecord } from '../../../contract/record/index.js'
import { toRecordUnit } from '../../cells/units.js'
import { mean } from '../../mean.js'
import type { Answers, Question } from '../interpretation.js'
import type { Figures } from './check-results.js'
import type { ResultOfLog } from './result-of-log.js'

/** Firms correct for air and zero flow in their own ways, and round; a result further off has another cause. Own choice, no source. */
const CONTRADICTS = 0.1
/** A gross volume, or the area of another house, is within this of the right one; a result further off is of something else. */
const FACTOR = 2

/**
 * The log's own air change rate or air permeability does not fit its volume or envelope area, and nothing speaks against its flows: the
 * size may be a gross one, or one that was changed since. Asked, with the size that fits.
 */
export function contradictedSize(
  record: TestRecord,
  results: readonly ResultOfLog[],
  figures: Figures,
  answers: Answers,
): Question | undefined {
  // Where somebody has chosen flows that the log's own result speaks against, the result is what is wrong.
  if (answers['flow.unit'] !== undefined || answers['flow.column'] !== undefined) return undefined
  const of = (name: keyof Figures) =>
    offOf(
      results.filter((result) => result.name === name),
      figures[name],
    )
  const [rate, permeability, flow] = [of('n50'), of('qE50'), of('q50')]
  // Where the flows are off too, or both results by as much, it is no matter of a size.
  if (flow && isFar(flow.off)) return undefined
  if (rate && permeability && Math.abs(rate.off / permeability.off - 1) < CONTRADICTS) return undefined
  for (const [result, size, name] of [
    [rate, record.building.volume_m3, 'volume'],
    [permeability, record.building.envelopeArea_m2, 'envelopeArea'],
  ] as const) {
    if (!result || size === undefined || !isFar(result.off)) continue
    const path = name === 'volume' ? 'building.volume_m3' : 'building.envelopeArea_m2'
    if (answers[path] !== undefined || answers['volume.unit'] !== undefined) continue
    const isPossible = result.off < FACTOR && result.off > 1 / FACTOR
    if (!isPossible && !isFeetForMetres(result.off, name)) continue
    const { label, value, cell, read } = result
    const fitting = Number((size * result.off).toPrecision(3))
    return {
      path,
      cells: [cell],
      ...questions.contradictedSize({
        name,
        label,
        value,
        cell,
        read,
        size: Number(size.toPrecision(5)),
        fitting,
      }),
    }
  }
  return undefined
}

/** Numbers in m³ or m² that are headed in feet, or the other way round. */
const isFeetForMetres = (off: number, name: 'volume' | 'envelopeArea'): boolean => {
  const feet = toRecordUnit(
    1,
    name === 'volume' ? { kind: 'volume', unit: 'cuft' } : { kind: 'area', unit: 'sqft' },
  )
  return !isFar(off * feet) || !isFar(off / feet)
}

const isFar = (off: number): boolean => Math.abs(off - 1) > CONTRADICTS

/** How far what the readings give is from what the log records: 1 where any of its results agrees. */
function offOf(results: readonly ResultOfLog[], given: readonly number[]) {
  const [read] = given
  const [first] = results
  const value = mean(results.map((result) => result.value))
  if (read === undefined || first === undefined || value === undefined) return undefined
  const isNear = results.some((one) => given.some((other) => !isFar(other / one.value)))
  return { off: isNear ? 1 : read / value, read, value, label: first.label, cell: first.cell }
}
