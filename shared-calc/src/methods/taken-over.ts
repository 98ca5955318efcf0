import type { MethodLimits } from './method.js'

/** The limits of one standard as another takes them over: each cites where it is from, and what it finds is a note. */
export function takenOver(limits: MethodLimits): MethodLimits {
  const marked = Object.entries(limits).map(([name, limit]: [string, unknown]) => [name, withMark(limit)])
  return Object.fromEntries(marked) as MethodLimits
}

/** A limit, or a group of limits, with its source marked; what is common practice is nobody's clause. */
function withMark(limit: unknown): unknown {
  if (typeof limit !== 'object' || limit === null) return limit
  const { source } = limit as { source?: { seen: string } }
  if (source)
    return source.seen === 'common practice' ? limit : { ...limit, source: { ...source, takenOver: true } }
  return Object.fromEntries(Object.entries(limit).map(([name, inner]) => [name, withMark(inner)]))
}
