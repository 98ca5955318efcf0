import { finding } from '../../catalogue/findings/finding.js'
import { unheldTexts } from '../../contract/record/held-text.js'
import type { Rule } from './rule.js'

/** A text holds characters that a workbook cannot hold; the workbook shows � for them. */
export const textCharacters: Rule = ({ record }) => {
  const where = unheldTexts(record)
  return where.length === 0 ? [] : [finding('text-characters', { where })]
}
