import { directionOf } from '../../catalogue/findings/finding.js'
import type { Direction, Finding } from '../../contract/record/index.js'

const isOf = (one: Finding, direction: Direction): boolean => directionOf(one)?.direction === direction

const sameOtherwise = (one: Finding, other: Finding): boolean =>
  directionOf(one)?.id === directionOf(other)?.id &&
  one.severity === other.severity &&
  one.remedy === other.remedy &&
  one.value === other.value &&
  one.limit === other.limit &&
  directionOf(one)?.ofBoth() === directionOf(other)?.ofBoth()

/** One finding where the two directions have the same one, word for word; it names the fields of both. */
export function joinBothDirections(findings: readonly Finding[]): Finding[] {
  const twins = new Map<Finding, Finding>()
  const joined = new Set<Finding>()
  for (const one of findings) {
    if (!isOf(one, 'depressurisation')) continue
    const twin = findings.find(
      (other) => isOf(other, 'pressurisation') && !joined.has(other) && sameOtherwise(one, other),
    )
    if (!twin) continue
    twins.set(one, twin)
    joined.add(twin)
  }
  return findings.flatMap((one) => {
    if (joined.has(one)) return []
    const twin = twins.get(one)
    if (!twin) return [one]
    return [
      { ...one, message: directionOf(one)?.ofBoth() ?? one.message, where: [...one.where, ...twin.where] },
    ]
  })
}
