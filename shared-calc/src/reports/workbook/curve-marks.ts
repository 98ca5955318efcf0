import type { Workbook, Worksheet } from 'exceljs'
import type { AssessedTest } from '../../assessment/evaluate.js'
import { unitText } from '../../catalogue/shown-figure.js'
import { unitOf } from '../../evaluation/work/definite-target.js'
import { columnLetters, reference } from './address.js'
import type { ChartSeries } from './chart/description.js'
import type { Places } from './places.js'
import { dress, fonts } from './styles.js'
import { WORKING } from './working-sheet.js'

/** Right of the printed columns of Working. */
const COLUMN = 15
const FIRST_ROW = 3

/** Pressures that a tester looks for on the axis, Pa. */
const PRESSURES = [1, 2, 4, 5, 10, 20, 30, 50, 70, 100, 200] as const
const MOST_FLOWS = 8

interface Limits {
  readonly min: number
  readonly max: number
}

/**
 * Marks on the leakage curve: a logarithmic axis of a spreadsheet labels nothing between 10 and 100, so the labels are
 * points of their own, with cells right of the print area of Working.
 * @returns series for the chart: labels of both axes, a line at 50 Pa, and the flow at each limit
 */
export function writeCurveMarks(
  workbook: Workbook,
  test: AssessedTest,
  places: Places,
  x: Limits,
  y: Limits,
): ChartSeries[] {
  const writer = new MarkWriter(workbook.getWorksheet(WORKING) as Worksheet)
  const within = ({ min, max }: Limits, value: number) => value >= min && value <= max
  const pressures = PRESSURES.filter((pressure) => within(x, pressure))
  const flows = roundFlows(y)
  const plain = { style: {}, inLegend: false } as const
  const limits = test.criteria.filter(({ flow }) => within(y, flow.value('q_t')))
  return [
    writer.series(
      'pressure labels',
      pressures.map((p) => [p, y.min]),
      {
        ...plain,
        labels: { texts: pressures.map(String), position: 'b' },
      },
    ),
    writer.series(
      'flow labels',
      flows.map((q) => [x.min, q]),
      {
        ...plain,
        labels: { texts: flows.map(String), position: 'l' },
      },
    ),
    ...(within(x, 50)
      ? [
          writer.series(
            '50 Pa',
            [
              [50, y.min],
              [50, y.max],
            ],
            {
              style: { line: { colour: '7B8794', width: 1, dash: 'sysDot' } },
              inLegend: false,
            },
          ),
        ]
      : []),
    ...limits
      .filter(({ referencePressure_Pa: p }) => within(x, p))
      .map(({ quantity, referencePressure_Pa, value, flow }) => {
        const shown = `${value.value('L')} ${unitText(unitOf(quantity))}`
        return writer.series(
          `limit: ${quantity.replace('_pr', '')} ${shown} at ${referencePressure_Pa} Pa`,
          [
            [
              referencePressure_Pa,
              { formula: reference(places.symbol(flow.id, 'q_t')), result: flow.value('q_t') },
            ],
          ],
          {
            style: { marker: { shape: 'diamond', size: 10, fill: 'A61B1B', outline: 'A61B1B' } },
            labels: { texts: [`limit ${shown}`], position: 'r' },
          },
        )
      }),
  ]
}

/** Round flows within the axis: 1, 1.5, 2, 3, 5 and 7 times a power of ten, or fewer where there is no room for all. */
function roundFlows({ min, max }: Limits): number[] {
  const steps = [[1, 1.5, 2, 3, 4, 5, 7], [1, 2, 3, 5, 7], [1, 2, 5], [1]]
  for (const step of steps) {
    const found: number[] = []
    for (let decade = 10 ** Math.floor(Math.log10(min)); decade <= max; decade *= 10)
      for (const s of step) {
        const flow = Number((s * decade).toPrecision(3))
        if (flow >= min * 0.9999 && flow <= max * 1.0001) found.push(flow)
      }
    if (found.length <= MOST_FLOWS) return found
  }
  return [min, max]
}

type Coordinate = number | { readonly formula: string; readonly result: number }

/** Writes the marks one below the other and gives their cells as series. */
class MarkWriter {
  private row = FIRST_ROW

  constructor(private readonly sheet: Worksheet) {
    dress(sheet.getCell(1, COLUMN), { font: fonts.small }).value = 'Marks on the leakage curve (not printed)'
  }

  series(
    name: string,
    points: readonly (readonly [Coordinate, Coordinate])[],
    look: Pick<ChartSeries, 'style' | 'inLegend' | 'labels'>,
  ): ChartSeries {
    dress(this.sheet.getCell(this.row, COLUMN), { font: fonts.small }).value = name
    const first = this.row + 1
    for (const [x, y] of points) {
      this.row += 1
      dress(this.sheet.getCell(this.row, COLUMN), { font: fonts.small }).value = x
      dress(this.sheet.getCell(this.row, COLUMN + 1), {
        font: fonts.small,
        ...(typeof y === 'object' && { numFmt: '0.00' }),
      }).value = y
    }
    const last = this.row
    const range = (column: number) => ({
      sheet: WORKING,
      range: `${columnLetters(column)}${first}:${columnLetters(column)}${last}`,
    })
    const cached = (which: 0 | 1) => points.map((point) => resultOf(point[which]))
    this.row += 2
    return {
      name,
      xRef: range(COLUMN),
      yRef: range(COLUMN + 1),
      xCache: cached(0),
      yCache: cached(1),
      ...look,
    }
  }
}

const resultOf = (coordinate: Coordinate): number =>
  typeof coordinate === 'number' ? coordinate : coordinate.result
