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

/** Preparation as ISO 9972 (methods 1 to 3), EN 13829 (methods A and B) and CAN/CGSB-149.10 name it. */
export const BuildingPreparation = z.enum(
  ['method 1', 'method 2', 'method 3', 'method A', 'method B', 'as-operated', 'closed-up'],
  {
    error:
      'preparation must be "method 1", "method 2", "method 3", "method A", "method B", "as-operated" or "closed-up"',
  },
)
export type BuildingPreparation = z.infer<typeof BuildingPreparation>

/** Whether adjoining spaces were held at the pressure of the tested one, so that only leaks to outdoors count. */
export const AdjoiningSpaces = z.enum(['guarded', 'unguarded'], {
  error: 'adjoiningSpaces must be "guarded" or "unguarded"',
})
export type AdjoiningSpaces = z.infer<typeof AdjoiningSpaces>

export const TestDetails = z.strictObject({
  id: textField('test number').optional(),
  date: dateField('test date'),
  stage: Stage.optional(),
  tester: textField('tester').optional(),
  organisation: textField('organisation').optional(),
  client: textField('client').optional(),
  method: nameField('test method'),
  preparation: BuildingPreparation.optional(),
  /** From record@3 on. */
  adjoiningSpaces: AdjoiningSpaces.optional(),
  purpose: textField('purpose').optional(),
  notes: textField('notes').optional(),
  openings: z.array(Opening).max(500).optional(),
})
export type TestDetails = z.infer<typeof TestDetails>
