import { z } from 'zod'
import { OwnTarget } from '../record/target.js'
import { nameField, textField } from '../record/text-field.js'

export const TARGET_FORMAT = 'draughtbook/target@1'

/** A limit the firm works to, such as a client's. */
export const LibraryTarget = z.strictObject({
  format: z.literal(TARGET_FORMAT, { error: `format must be "${TARGET_FORMAT}"` }),
  name: nameField('name of the target'),
  /** Document that sets the limit. */
  source: textField('source of the limit').optional(),
  target: OwnTarget,
})
export type LibraryTarget = z.infer<typeof LibraryTarget>
