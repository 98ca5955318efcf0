import { z } from 'zod'
import { anyOf, figureShapes, solidShapes } from './choices.js'
import { numberField } from './number-field.js'

/** A length of a building part, m. */
export const lengthField = (term: string, minimum = 0.001) =>
  numberField({ term, unit: 'm' }, minimum, 10_000)

const area = (term: string) => numberField({ term, unit: 'm²' }, 0.0001, 1e7)

const plan = { length_m: lengthField('length'), width_m: lengthField('width') }

/** Solids that rooms, stairs, voids and sloped ceilings are made up of. */
export const Solid = z.discriminatedUnion(
  'shape',
  [
    /** A floor area read off a plan, times its mean clear height. */
    z.strictObject({
      shape: z.literal('floor area'),
      floorArea_m2: area('floor area'),
      floorAreaUncertainty_m2: numberField(
        { term: 'standard uncertainty of the floor area', unit: 'm²' },
        0,
        1e6,
      ).optional(),
      height_m: lengthField('mean clear height'),
    }),
    z.strictObject({ shape: z.literal('box'), ...plan, height_m: lengthField('clear height') }),
    /** A room under sloped ceilings: knee wall, slope up to a flat middle part (width 0 where the slopes meet). */
    z
      .strictObject({
        shape: z.literal('under slopes'),
        ...plan,
        kneeHeight_m: lengthField('height of the knee wall', 0),
        ridgeHeight_m: lengthField('height of the flat part or of the ridge'),
        flatWidth_m: lengthField('width of the flat part', 0),
      })
      .superRefine((solid, context) => {
        if (solid.ridgeHeight_m < solid.kneeHeight_m)
          context.addIssue({
            code: 'custom',
            path: ['ridgeHeight_m'],
            message: `ridge height of ${solid.ridgeHeight_m} m is below the knee wall height of ${solid.kneeHeight_m} m`,
          })
        if (solid.flatWidth_m > solid.width_m)
          context.addIssue({
            code: 'custom',
            path: ['flatWidth_m'],
            message: `flat part of ${solid.flatWidth_m} m is wider than the room of ${solid.width_m} m`,
          })
      }),
    z.strictObject({ shape: z.literal('wedge'), ...plan, height_m: lengthField('height of the wedge') }),
    z.strictObject({ shape: z.literal('pyramid'), ...plan, height_m: lengthField('height of the pyramid') }),
    /** Sloped on all sides up to a smaller flat top: light well, hipped ceiling. */
    z.strictObject({
      shape: z.literal('frustum'),
      ...plan,
      topLength_m: lengthField('length of the top', 0),
      topWidth_m: lengthField('width of the top', 0),
      height_m: lengthField('height of the frustum'),
    }),
  ],
  { error: `shape must be ${anyOf(solidShapes)}` },
)
export type Solid = z.infer<typeof Solid>

/** Plane figures that the elements of the envelope are made up of. */
export const PlaneFigure = z.discriminatedUnion(
  'shape',
  [
    z.strictObject({
      shape: z.literal('area'),
      area_m2: area('area of the element'),
      areaUncertainty_m2: numberField(
        { term: 'standard uncertainty of the area', unit: 'm²' },
        0,
        1e6,
      ).optional(),
    }),
    z.strictObject({
      shape: z.literal('rectangle'),
      length_m: lengthField('length'),
      height_m: lengthField('height, or length along the slope'),
    }),
    z.strictObject({
      shape: z.literal('triangle'),
      length_m: lengthField('base'),
      height_m: lengthField('height'),
    }),
    z.strictObject({
      shape: z.literal('trapezium'),
      length_m: lengthField('longer side'),
      topLength_m: lengthField('shorter side'),
      height_m: lengthField('height'),
    }),
  ],
  { error: `shape must be ${anyOf(figureShapes)}` },
)
export type PlaneFigure = z.infer<typeof PlaneFigure>
