import { capital } from '../../catalogue/words.js'
import type { Finding } from '../../contract/record/index.js'

const of = (direction: 'depressurisation' | 'pressurisation'): string => `${capital(direction)}: `
const [out, into] = [of('depressurisation'), of('pressurisation')]

/** What a finding says after its direction; undefined where it does not begin with one. */
const remainder = ({ message }: Finding): string | undefined =>
  [out, into].flatMap((start) => (message.startsWith(start) ? [message.slice(start.length)] : []))[0]

const sameOtherwise = (one: Finding, other: Finding): boolean =>
  one.rule === other.rule &&
  one.severity === other.severity &&
  one.remedy === other.remedy &&
  one.value === other.value &&
  one.limit === other.limit &&
  remainder(one) === remainder(other)

/** One finding where the two directions have the same one, word for word; it names the fields of both. */
export function joinBothDirections(findings: readonly Finding[]): Finding[] {
  const twins = new Map<Finding, Finding>()
  for (const one of findings) {
    if (!one.message.startsWith(out)) continue
    const twin = findings.find((other) => other.message.startsWith(into) && sameOtherwise(one, other))
    if (twin && ![...twins.values()].includes(twin)) twins.set(one, twin)
  }
  const joined = new Set(twins.values())
  return findings.flatMap((one) => {
    if (joined.has(one)) return []
    const twin = twins.get(one)
    if (!twin) return [one]
    return [{ ...one, message: `Both directions: ${remainder(one)}`, where: [...one.where, ...twin.where] }]
  })
}
