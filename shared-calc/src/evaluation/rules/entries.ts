import { finding } from '../../catalogue/findings/finding.js'
import { type PlausibleField, plausibleRanges, type TestRecord } from '../../contract/record/index.js'
import { unheldTexts } from '../../contract/record/text-field.js'
import type { Rule } from './rule.js'

/** A value that the schema lets pass but that no ordinary test has: a slip of unit or of the pen. */
export const implausibleValue: Rule = ({ record }) =>
  (Object.keys(plausibleRanges) as PlausibleField[]).flatMap((field) => {
    const value = valueAt(record, field)
    const range = plausibleRanges[field]
    const { lowest, highest } = range
    if (value === undefined || (value >= lowest && value <= highest)) return []
    return [
      finding(
        'implausible-value',
        { where: [field], value, limit: value < lowest ? lowest : highest },
        { ...range, value },
      ),
    ]
  })

function valueAt(record: TestRecord, field: PlausibleField): number | undefined {
  const [part, name] = field.split('.') as ['building', 'volume_m3']
  return record[part]?.[name]
}

/** A text holds characters that a workbook cannot hold; the workbook shows � for them. */
export const textCharacters: Rule = ({ record }) => {
  const where = unheldTexts(record)
  return where.length === 0 ? [] : [finding('text-characters', { where })]
}
