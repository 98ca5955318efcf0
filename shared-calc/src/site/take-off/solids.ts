import type { Solid, Space, TakeOff } from '../../contract/record/index.js'
import { assumed, byRule, type Calculation, fromRecord, type Given } from '../../engine/index.js'
import { areaTimesHeight, frustums, straightSolids, underSlopes } from '../../formulas/take-off-solids.js'
import { addRows, lengthUncertainty, type Part, type PlacedRow, signedCount } from './rows.js'

type Shape = Solid['shape']
type OfShape<S extends Shape> = Extract<Solid, { shape: S }>

const divisors = { box: 1, wedge: 2, pyramid: 3 } as const

/** Volume and plan area of every space, one block for each family of solids. */
export function workSolids(calculation: Calculation, takeOff: TakeOff, at: string): Map<Space, PlacedRow> {
  const parts = takeOff.spaces.map((part, i): Part<Space> => ({ part, path: `${at}.spaces[${i}]` }))
  const family = <S extends Shape>(
    id: string,
    chapter: typeof frustums,
    shapes: readonly S[],
    dimensions: Readonly<Record<string, (solid: OfShape<S>, path: string) => Given>>,
  ): Map<Space, PlacedRow> => {
    const members = parts.filter(({ part }) => (shapes as readonly Shape[]).includes(part.solid.shape))
    const member = (index: number) => members[index] as Part<Space>
    const columns = Object.entries(dimensions).map(([symbol, given]) => [
      symbol,
      (index: number) => given(member(index).part.solid as OfShape<S>, `${member(index).path}.solid`),
    ])
    return addRows(
      calculation,
      `takeOff.${id}`,
      `Take-off: ${chapter.title.toLowerCase()}`,
      chapter,
      members,
      {
        z: (index) => signedCount(member(index)),
        u_l: (index) => lengthUncertainty(takeOff, member(index), at),
        ...Object.fromEntries(columns),
      },
    )
  }
  return new Map([
    ...family('areas', areaTimesHeight, ['floor area'], {
      A: ({ floorArea_m2 }, path) => fromRecord(`${path}.floorArea_m2`, floorArea_m2),
      u_f: ({ floorAreaUncertainty_m2: given }, path) =>
        given === undefined
          ? assumed(0, 'area-uncertainty-not-stated')
          : fromRecord(`${path}.floorAreaUncertainty_m2`, given),
      h: height,
    }),
    ...family('straight', straightSolids, ['box', 'wedge', 'pyramid'], {
      l: length,
      w: width,
      h: height,
      k_s: ({ shape }) => byRule(divisors[shape], `divisor of a ${shape}`),
    }),
    ...family('slopes', underSlopes, ['under slopes'], {
      l: length,
      w: width,
      h_k: ({ kneeHeight_m }, path) => fromRecord(`${path}.kneeHeight_m`, kneeHeight_m),
      h_r: ({ ridgeHeight_m }, path) => fromRecord(`${path}.ridgeHeight_m`, ridgeHeight_m),
      w_f: ({ flatWidth_m }, path) => fromRecord(`${path}.flatWidth_m`, flatWidth_m),
    }),
    ...family('frustums', frustums, ['frustum'], {
      l: length,
      w: width,
      l_t: ({ topLength_m }, path) => fromRecord(`${path}.topLength_m`, topLength_m),
      w_t: ({ topWidth_m }, path) => fromRecord(`${path}.topWidth_m`, topWidth_m),
      h: height,
    }),
  ])
}

const length = ({ length_m }: { length_m: number }, path: string) => fromRecord(`${path}.length_m`, length_m)
const width = ({ width_m }: { width_m: number }, path: string) => fromRecord(`${path}.width_m`, width_m)
const height = ({ height_m }: { height_m: number }, path: string) => fromRecord(`${path}.height_m`, height_m)
