import { z } from 'zod'
import { leakKinds, sizesInWords, waysOfFinding } from './choices.js'
import { numberField } from './number-field.js'
import { Direction } from './runs.js'
import { dateField, nameField, textField } from './text-field.js'

export const LeakKind = z.enum(leakKinds, { error: 'not a known kind of leak' })
export type LeakKind = z.infer<typeof LeakKind>

export const FoundBy = z.enum(waysOfFinding, { error: 'not a known way of finding a leak' })

export const SizeWord = z.enum(sizesInWords, { error: 'not a known size' })
export type SizeWord = z.infer<typeof SizeWord>

/** A size: in words, or as measured. Gaps in words need their length. */
export const LeakSize = z
  .strictObject({
    words: SizeWord.optional(),
    length_m: numberField({ term: 'length of the gap', unit: 'm' }, 0.001, 1000).optional(),
    width_mm: numberField({ term: 'width of the gap', unit: 'mm' }, 0.01, 10_000).optional(),
    diameter_mm: numberField({ term: 'diameter of the hole', unit: 'mm' }, 0.1, 10_000).optional(),
    area_cm2: numberField({ term: 'area of the hole', unit: 'cm²' }, 0.001, 1e6).optional(),
  })
  .superRefine((size, context) => {
    const ways = [size.words, size.width_mm, size.diameter_mm, size.area_cm2].filter((w) => w !== undefined)
    if (ways.length !== 1)
      context.addIssue({
        code: 'custom',
        path: [],
        message: 'give the size in one way only: in words, by width and length, by diameter, or as an area',
      })
    const isGap = size.width_mm !== undefined || size.words?.endsWith('gap') === true
    if (isGap && size.length_m === undefined)
      context.addIssue({ code: 'custom', path: ['length_m'], message: 'a gap needs its length' })
    if (!isGap && size.length_m !== undefined)
      context.addIssue({ code: 'custom', path: ['length_m'], message: 'only a gap has a length' })
  })
export type LeakSize = z.infer<typeof LeakSize>

export const Leak = z.strictObject({
  place: nameField('place of the leak'),
  kind: LeakKind,
  foundBy: FoundBy.optional(),
  /** Directions under which it was seen to leak; left out where nobody looked under both. */
  seenUnder: z.enum([...Direction.options, 'both']).optional(),
  size: LeakSize.optional(),
  count: z.int({ error: 'count must be a whole number' }).min(1).max(10_000).optional(),
  photo: textField('file name of the photo').optional(),
  fixed: z.boolean({ error: 'fixed must be true or false' }),
  /** Number of the repair round in which it was fixed, counted from 1. */
  fixedInRound: z.int().min(1).max(100).optional(),
  note: textField('note').optional(),
})
export type Leak = z.infer<typeof Leak>

/** An earlier test of the same building, so that it can be seen what each repair round brought. */
export const EarlierTest = z.strictObject({
  date: dateField('date of the earlier test'),
  label: textField('label of the earlier test').optional(),
  /** Air leakage rate at 50 Pa, mean of the directions run. */
  airLeakageRate50_m3_h: numberField({ term: 'air leakage rate at 50 Pa', unit: 'm³/h' }, 1e-6, 1e7),
  directions: z.array(Direction).min(1).max(2).optional(),
  recordDigest: z
    .string()
    .regex(/^[0-9a-f]{64}$/, { error: 'record digest must be 64 hexadecimal digits' })
    .optional(),
  repairsAfter: textField('repairs done after the earlier test').optional(),
})
export type EarlierTest = z.infer<typeof EarlierTest>

/** The leaks found, and the tests before this one, oldest first. */
export const LeakLog = z.strictObject({
  list: z.array(Leak).max(2000),
  earlierTests: z.array(EarlierTest).max(100).optional(),
})
export type LeakLog = z.infer<typeof LeakLog>
