import { finding } from '../../catalogue/findings/finding.js'
import { type PlausibleField, plausibleRanges } from '../../contract/record/index.js'
import { unheldTexts } from '../../contract/record/text-field.js'
import { inEach, type Rule, silent } from './rule.js'

/** A value that the schema lets pass but that no ordinary test has: a slip of unit or of the pen. */
export const implausibleValue: Rule = ({ record }) =>
  inEach(fields, ({ field, part, name, range }) => {
    const value = record[part]?.[name]
    const { lowest, highest } = range
    if (value === undefined || (value >= lowest && value <= highest)) return silent
    return [
      finding(
        'implausible-value',
        { where: [field], value, limit: value < lowest ? lowest : highest },
        { ...range, value },
      ),
    ]
  })

const fields = (Object.keys(plausibleRanges) as PlausibleField[]).map((field) => {
  const [part, name] = field.split('.') as ['building', 'volume_m3']
  return { field, part, name, range: plausibleRanges[field] }
})

/** A text holds characters that a workbook cannot hold; the workbook shows � for them. */
export const textCharacters: Rule = ({ record }) => {
  const where = unheldTexts(record)
  return where.length === 0 ? silent : [finding('text-characters', { where })]
}
