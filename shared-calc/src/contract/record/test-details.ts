import { z } from 'zod'
import { adjoiningSpaces, anyOf, openingKinds, openingStates, preparationMethods, stages } from './choices.js'
import { dateField, nameField, textField } from './text-field.js'

export const Stage = z.enum(stages, { error: `stage must be ${anyOf(stages)}` })
export type Stage = z.infer<typeof Stage>

export const OpeningKind = z.enum(openingKinds, { error: 'not a known kind of opening' })
export type OpeningKind = z.infer<typeof OpeningKind>

export const OpeningState = z.enum(openingStates, { error: `state must be ${anyOf(openingStates)}` })

export const Opening = z.strictObject({
  opening: nameField('opening'),
  /** Which entry of the preparation list it is (from record@2 on). */
  kind: OpeningKind.optional(),
  state: OpeningState,
  note: textField('note').optional(),
})
export type Opening = z.infer<typeof Opening>

export const BuildingPreparation = z.enum(preparationMethods, {
  error: `preparation must be ${anyOf(preparationMethods)}`,
})
export type BuildingPreparation = z.infer<typeof BuildingPreparation>

export const AdjoiningSpaces = z.enum(adjoiningSpaces, {
  error: `adjoiningSpaces must be ${anyOf(adjoiningSpaces)}`,
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
