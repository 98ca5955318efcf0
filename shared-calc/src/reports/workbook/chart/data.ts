import type { CachedValue, RangeReference } from './description.js'
import { cellCount, rangeFormula } from './reference.js'
import { asText, element, escapeXml, valued } from './xml.js'

/**
 * Reference to cells with their cached values, inside `name` (`c:xVal`, `c:yVal`, `c:cat` or `c:val`).
 * Throws RangeError when the cache does not match the range, or holds text where numbers belong.
 */
export function dataSource(
  name: string,
  type: 'number' | 'text',
  reference: RangeReference,
  cache: readonly CachedValue[] | undefined,
): string {
  const kind = type === 'number' ? 'num' : 'str'
  const stored = cache ? element(`c:${kind}Cache`, {}, ...points(type, reference, cache)) : ''
  const formula = `<c:f>${escapeXml(rangeFormula(reference))}</c:f>`
  return element(name, {}, element(`c:${kind}Ref`, {}, formula, stored))
}

function points(type: 'number' | 'text', reference: RangeReference, cache: readonly CachedValue[]): string[] {
  const where = `${reference.sheet}!${reference.range}`
  const count = cellCount(reference)
  if (cache.length !== count) {
    throw new RangeError(`${where} has ${count} cells and ${cache.length} cached values`)
  }
  const format = type === 'number' ? ['<c:formatCode>General</c:formatCode>'] : []
  const values = cache.map((value, idx) => {
    if (value === null) return ''
    if (type === 'number' && typeof value === 'string') {
      throw new RangeError(`${where} holds the text ${JSON.stringify(value)} where the chart needs a number`)
    }
    return element('c:pt', { idx }, `<c:v>${escapeXml(asText(value))}</c:v>`)
  })
  return [...format, valued('c:ptCount', count), ...values]
}
