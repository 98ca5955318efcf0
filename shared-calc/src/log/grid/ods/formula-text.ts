import { LIMITS } from '../../limits.js'

/**
 * A formula as a workbook would hold it: `of:=SUM([.A1:.B2];[$Log.C3])` becomes `SUM(A1:B2,Log!C3)`. Only what is shown
 * and searched for names; nothing is computed from it.
 */
export function formulaText(written: string): string {
  const plain = written
    .slice(0, LIMITS.cellCharacters)
    .replace(/^[a-z]+:/i, '')
    .replace(/^=/, '')
  return plain
    .replace(/\[([^[\]]*)\]/g, (_, reference: string) => referenceText(reference))
    .split(/("[^"]*")/)
    .map((part, index) => (index % 2 === 0 ? part.replaceAll(';', ',') : part))
    .join('')
}

function referenceText(reference: string): string {
  return reference
    .split(':')
    .map((end) => {
      const dot = end.lastIndexOf('.')
      const sheet = end.slice(0, dot).replace(/^\$/, '')
      return dot <= 0 ? end.slice(dot + 1) : `${sheet}!${end.slice(dot + 1)}`
    })
    .join(':')
}
