import { questions } from '../../catalogue/questions.js'
import { plain } from '../../catalogue/words.js'
import { blockText, withSheet } from '../grid/address.js'
import { likelyOfPressures, numbersOf } from '../layout/list-unit.js'
import { findList } from '../layout/lists.js'
import { unitOfList } from '../layout/look.js'
import type { RunLayout } from '../layout/schema.js'
import type { Scope } from '../layout/scope.js'
import { mean } from '../mean.js'
import { type DecidedSign, decideSigns } from '../signs.js'
import type { ListRole, PickedCells, PickedLists, PickedQuestion } from './picks.js'

/** A run from picked cells, as a layout would state it; its sign is decided from the cells of all runs. */
export type TrimmedRun = PickedLists & { pressure: PickedCells }

const column = ({ sheet, block, unit }: PickedCells): RunLayout['pressure'] => ({
  at: { range: blockText(block), sheet },
  ...(unit === undefined ? {} : { unit }),
})

/** What the picked cells of a run say, in the words of a layout. */
export function runLayout(run: TrimmedRun, sign: DecidedSign | undefined): RunLayout {
  const { direction, pressure, flow, devicePressure, zeroFlowBefore, zeroFlowAfter, ranges, range } = run
  return {
    direction,
    ...(sign && { sign: signLayout(sign) }),
    pressure: column(pressure),
    ...(flow ? { flow: column(flow) } : devicePressure ? { devicePressure: column(devicePressure) } : {}),
    ...(zeroFlowBefore && { zeroFlowBefore: column(zeroFlowBefore) }),
    ...(zeroFlowAfter && { zeroFlowAfter: column(zeroFlowAfter) }),
    ...(!flow && devicePressure && ranges
      ? { range: column(ranges) }
      : !flow && devicePressure && range
        ? { range: { value: range } }
        : {}),
  }
}

function signLayout({ readings, zero, reversed }: DecidedSign): NonNullable<RunLayout['sign']> {
  return {
    readings: readings === 1 ? 'inside minus outside' : reversed ? 'outside minus inside' : 'without sign',
    zeroFlow: zero === 1 ? 'inside minus outside' : 'outside minus inside',
  }
}

/** Signs of all runs together, with the question that is open. */
export function signsOfPicks(
  scope: Scope,
  runs: readonly TrimmedRun[],
): { signs: DecidedSign[]; questions: PickedQuestion[] } {
  const logged = runs.map((run) => ({
    direction: run.direction,
    pressures: valuesOf(scope, run.pressure),
    zero: mean([run.zeroFlowBefore, run.zeroFlowAfter].flatMap((one) => (one ? valuesOf(scope, one) : []))),
  }))
  const answer = runs.map(({ zeroFlowSign }) => zeroFlowSign).find((one) => one !== undefined)
  const signs = decideSigns(logged, answer)
  return {
    signs,
    questions: signs.flatMap(({ zeroFlow }, index) => {
      const { direction, zero = 0 } = logged[index] ?? {}
      return zeroFlow === 'open' && direction
        ? [
            {
              path: 'zeroFlow.sign',
              direction,
              cells: [cellsOf(runs[index]?.zeroFlowBefore ?? runs[index]?.zeroFlowAfter)],
              ...questions.zeroFlowSign({ direction, mean: plain(zero) }),
            },
          ]
        : []
    }),
  }
}

/** The units that nothing states of the lists of a run: of flows always, of pressures where their size leaves more than one. */
export function unitQuestions(scope: Scope, run: TrimmedRun): PickedQuestion[] {
  const open = (role: ListRole, cells: PickedCells, kind: 'pressure' | 'flow'): boolean => {
    if (cells.unit !== undefined) return false
    const list = findList(scope, column(cells).at, role, true)
    return (
      unitOfList(list, kind, undefined, role) === undefined &&
      numbersOf(scope, list).some(({ unit }) => unit === undefined) &&
      !(kind === 'pressure' && likelyOfPressures(scope, list))
    )
  }
  const { pressure, flow, direction } = run
  return [
    ...(open('pressure', pressure, 'pressure')
      ? [
          {
            path: 'pressure.unit',
            role: 'pressure' as const,
            direction,
            cells: [cellsOf(pressure)],
            ...questions.pressureUnit({ heading: cellsOf(pressure) }),
          },
        ]
      : []),
    ...(flow && open('flow', flow, 'flow')
      ? [
          {
            path: 'flow.unit',
            role: 'flow' as const,
            direction,
            cells: [cellsOf(flow)],
            ...questions.flowUnit({ heading: cellsOf(flow), american: false }),
          },
        ]
      : []),
  ]
}

const valuesOf = (scope: Scope, cells: PickedCells): number[] =>
  numbersOf(scope, findList(scope, column(cells).at, 'runs', true)).map(({ value }) => value)

const cellsOf = (cells: PickedCells | undefined): string =>
  cells ? withSheet(cells.sheet, blockText(cells.block)) : ''
