import { z } from 'zod'
import { Finding, pathText, TestRecord } from '../contract/record/index.js'
import { CellRange, gridFromRanges } from './grid/ranges.js'
import { Layout } from './layout/schema.js'
import { LogError, problem } from './problem.js'
import { readGrid, testsOf } from './read-log.js'
import { ToldStation, toldStations } from './series/told-stations.js'

/** Cells of an open workbook to be read as a test log. */
export const ReadingsRequest = z.strictObject({
  ranges: z.array(CellRange).min(1).max(500),
  /** The layout to use. Without it the library's are tried, then one is proposed. */
  layout: Layout.optional(),
  acceptProposal: z.boolean().optional(),
  /** The workbook counts its days from 1904. */
  date1904: z.boolean().optional(),
  fileName: z.string().max(255).optional(),
})

const Guess = z.strictObject({
  path: z.string(),
  cells: z.array(z.string()),
  reason: z.string(),
  confidence: z.number(),
})

/** The tests read; or, where no layout fits and none was accepted, only what was proposed. */
export const ReadingsAnswer = z.strictObject({
  tests: z.array(
    z.strictObject({
      record: TestRecord,
      /** Field path → cell address. */
      cells: z.record(z.string(), z.string()),
      findings: z.array(Finding),
      /** Stations of the raw series the readings come from, one list for each series. */
      stations: z.array(z.array(ToldStation)),
    }),
  ),
  layoutUsed: Layout.optional(),
  proposal: z
    .strictObject({
      layout: Layout.optional(),
      guesses: z.array(Guess),
      notFound: z.array(z.string()),
      questions: z.array(z.string()),
      confidence: z.number(),
    })
    .optional(),
})
export type ReadingsAnswer = z.infer<typeof ReadingsAnswer>

/**
 * Reads ranges of cells as a test log: what `POST /v1/readings` does, with the one reader of the command line and the pane.
 * @param layouts - layouts to choose from where the request names none
 * @throws LogError with every fault, each naming its field and cell
 */
export function readRanges(input: unknown, layouts: readonly Layout[] = []): ReadingsAnswer {
  const parsed = ReadingsRequest.safeParse(input)
  if (!parsed.success)
    throw new LogError(
      parsed.error.issues.map(({ path, message }) =>
        problem('layout-invalid', message, { path: pathText(path) }),
      ),
    )
  const { ranges, layout, acceptProposal = false, date1904 = false, fileName = 'open workbook' } = parsed.data
  const grid = gridFromRanges(ranges, { fileName, date1904 })
  const read = readGrid(grid, { ...(layout ? { layout } : {}), layouts, acceptProposal })
  const { layoutUsed, proposal, tests } = read
  const waits = !layoutUsed && proposal !== undefined
  return {
    tests: waits
      ? []
      : testsOf(read).map(({ record, cells, findings }, index) => ({
          record,
          cells: { ...cells },
          findings,
          stations: (tests[index]?.series ?? []).map(toldStations),
        })),
    ...(layoutUsed ? { layoutUsed } : {}),
    ...(proposal ? { proposal } : {}),
  }
}
