import type { EnvelopeElement, PlaneFigure, TakeOff } from '../../contract/record/index.js'
import { assumed, byRule, type Calculation, fromRecord, type Given } from '../../engine/index.js'
import { givenAreas, straightFigures, trapeziums } from '../../formulas/take-off-figures.js'
import { addRows, lengthUncertainty, type Part, type PlacedRow, signedCount } from './rows.js'

type Shape = PlaneFigure['shape']
type OfShape<S extends Shape> = Extract<PlaneFigure, { shape: S }>

const divisors = { rectangle: 1, triangle: 2 } as const

/** Area of every element of the envelope, one block for each family of figures. */
export function workFigures(
  calculation: Calculation,
  takeOff: TakeOff,
  at: string,
): Map<EnvelopeElement, PlacedRow> {
  const parts = (takeOff.elements ?? []).map(
    (part, i): Part<EnvelopeElement> => ({ part, path: `${at}.elements[${i}]` }),
  )
  const family = <S extends Shape>(
    id: string,
    chapter: typeof givenAreas,
    shapes: readonly S[],
    dimensions: Readonly<Record<string, (figure: OfShape<S>, path: string) => Given>>,
  ): Map<EnvelopeElement, PlacedRow> => {
    const members = parts.filter(({ part }) => (shapes as readonly Shape[]).includes(part.figure.shape))
    const member = (index: number) => members[index] as Part<EnvelopeElement>
    const columns = Object.entries(dimensions).map(([symbol, given]) => [
      symbol,
      (index: number) => given(member(index).part.figure as OfShape<S>, `${member(index).path}.figure`),
    ])
    return addRows(
      calculation,
      `takeOff.${id}`,
      `Envelope: ${chapter.title.toLowerCase()}`,
      chapter,
      members,
      {
        z: (index) => signedCount(member(index)),
        ...(chapter !== givenAreas && { u_l: (index) => lengthUncertainty(takeOff, member(index), at) }),
        ...Object.fromEntries(columns),
      },
    )
  }
  return new Map([
    ...family('givenAreas', givenAreas, ['area'], {
      A: ({ area_m2 }, path) => fromRecord(`${path}.area_m2`, area_m2),
      u_f: ({ areaUncertainty_m2: given }, path) =>
        given === undefined
          ? assumed(0, 'area-uncertainty-not-stated')
          : fromRecord(`${path}.areaUncertainty_m2`, given),
    }),
    ...family('figures', straightFigures, ['rectangle', 'triangle'], {
      l: length,
      h: height,
      k_s: ({ shape }) => byRule(divisors[shape], `divisor of a ${shape}`),
    }),
    ...family('trapeziums', trapeziums, ['trapezium'], {
      l: length,
      l_t: ({ topLength_m }, path) => fromRecord(`${path}.topLength_m`, topLength_m),
      h: height,
    }),
  ])
}

const length = ({ length_m }: { length_m: number }, path: string) => fromRecord(`${path}.length_m`, length_m)
const height = ({ height_m }: { height_m: number }, path: string) => fromRecord(`${path}.height_m`, height_m)
