import { z } from 'zod'
import { anyOf, cautionAnswers, cautionKinds } from './choices.js'
import { dateField, nameField, textField } from './text-field.js'

export const CautionKind = z.enum(cautionKinds, { error: 'not a known caution' })
export type CautionKind = z.infer<typeof CautionKind>

export const AcknowledgedCaution = z.strictObject({
  caution: CautionKind,
  answer: z.enum(cautionAnswers, { error: `answer must be ${anyOf(cautionAnswers)}` }),
  by: nameField('name of the tester who acknowledged the caution'),
  on: dateField('date on which the caution was acknowledged').optional(),
  note: textField('note').optional(),
})
export type AcknowledgedCaution = z.infer<typeof AcknowledgedCaution>

/** What was done before the test; the states of the openings are in `test.openings`. */
export const Preparation = z.strictObject({
  cautions: z
    .array(AcknowledgedCaution)
    .max(100)
    .refine((all) => new Set(all.map(({ caution }) => caution)).size === all.length, {
      error: 'a caution has two answers',
    }),
  notes: textField('notes on the preparation').optional(),
})
export type Preparation = z.infer<typeof Preparation>
