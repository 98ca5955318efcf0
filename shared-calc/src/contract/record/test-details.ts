import { z } from 'zod'
import { OpeningKind } from './opening-kind.js'
import { dateField, nameField, textField } from './text-field.js'

export const Stage = z.enum(['fabric', 'after services', 'acceptance', 'retest'], {
  error: 'stage must be "fabric", "after services", "acceptance" or "retest"',
})
export type Stage = z.infer<typeof Stage>

export const OpeningState = z.enum(['open', 'closed', 'sealed', 'filled', 'off', 'not present'], {
  error: 'state must be "open", "closed", "sealed", "filled", "off" or "not present"',
})

export const Opening = z.strictObject({
  opening: nameField('opening'),
  /** Which entry of the preparation list it is (from record@2 on). */
  kind: OpeningKind.optional(),
  state: OpeningState,
  note: textField('note').optional(),
})
export type Opening = z.infer<typeof Opening>

export const TestDetails = z.strictObject({
  id: textField('test number').optional(),
  date: dateField('test date'),
  stage: Stage.optional(),
  tester: textField('tester').optional(),
  organisation: textField('organisation').optional(),
  client: textField('client').optional(),
  method: nameField('test method'),
  preparation: z
    .enum(['method 1', 'method 2', 'method 3'], {
      error: 'preparation must be "method 1", "method 2" or "method 3"',
    })
    .optional(),
  purpose: textField('purpose').optional(),
  notes: textField('notes').optional(),
  openings: z.array(Opening).max(500).optional(),
})
export type TestDetails = z.infer<typeof TestDetails>
