import { z } from 'zod'
import { Finding, FoundBy, LeakKind, type LeakLog, type TestRecord } from '../contract/record/index.js'
import { directionsInWords } from '../site/leaks/directions-in-words.js'
import { leakFindings } from '../site/leaks/findings.js'
import { COMPARED_AT_PA, type WorkedHole, type WorkedLeaks, workLeaks } from '../site/leaks/work-leaks.js'
import { evaluateWorked } from './evaluate.js'

export const LEAK_REPORT_FORMAT = 'draughtbook/leak-report@1'

const finite = z.number()

/** An area with the square and the round hole of that area. */
const Hole = z.strictObject({ area_cm2: finite, squareSide_mm: finite, roundDiameter_mm: finite })
export type Hole = z.infer<typeof Hole>

/** What to do next: leaks with their weight, what is left to seal, what the repair rounds brought. */
export const LeakReport = z.strictObject({
  format: z.literal(LEAK_REPORT_FORMAT),
  comparedAt_Pa: finite,
  wholeLeakage: z.strictObject({ flow_m3_h: finite, hole: Hole }),
  leaks: z.array(
    z.strictObject({
      place: z.string(),
      kind: LeakKind,
      foundBy: FoundBy.optional(),
      fixed: z.boolean(),
      photo: z.string().optional(),
      area_cm2: finite.optional(),
      flow_m3_h: finite.optional(),
      shareOfWhole: finite.optional(),
    }),
  ),
  toSeal: z.array(
    z.strictObject({ quantity: z.string(), allowanceForAgeing: finite, flow_m3_h: finite, hole: Hole }),
  ),
  rounds: z.array(
    z.strictObject({
      round: finite,
      before: z.string(),
      gain_m3_h: finite,
      gainShare: finite,
      hole: Hole,
      /** Area of the leaks logged as fixed in this round, where they have a size. */
      loggedArea_cm2: finite,
    }),
  ),
  directions: z.array(z.string()),
  findings: z.array(Finding),
})
export type LeakReport = z.infer<typeof LeakReport>

/** The leak report of a record; its own leak log counts, or an empty one. Throws InputError as `evaluate` does. */
export function reportLeaks(record: TestRecord): LeakReport {
  const { test } = evaluateWorked(record)
  const log = record.leaks ?? { list: [] }
  return leakReport(record, log, test.leaks ?? workLeaks(test, log))
}

/** The report read off the blocks; nothing is computed here but sums of the log. */
export function leakReport(record: TestRecord, log: LeakLog, worked: WorkedLeaks): LeakReport {
  const { flows, sized, whole } = worked
  const rows = new Map(sized.map((leak, row) => [leak, row]))
  return {
    format: LEAK_REPORT_FORMAT,
    comparedAt_Pa: COMPARED_AT_PA,
    wholeLeakage: { flow_m3_h: whole.seal.value('q_s'), hole: holeOf(whole) },
    leaks: log.list.map((leak) => {
      const { place, kind, foundBy, fixed, photo } = leak
      const row = rows.get(leak)
      return {
        place,
        kind,
        ...(foundBy && { foundBy }),
        fixed,
        ...(photo !== undefined && { photo }),
        ...(flows &&
          row !== undefined && {
            area_cm2: flows.column('A_h')[row] as number,
            flow_m3_h: flows.column('q_h')[row] as number,
            shareOfWhole: flows.column('s_A')[row] as number,
          }),
      }
    }),
    toSeal: worked.toSeal.flatMap(({ criterion, now, aged }) =>
      [{ growth: 0, hole: now }, ...aged].map(({ growth, hole }) => ({
        quantity: criterion.quantity,
        allowanceForAgeing: growth,
        flow_m3_h: hole.seal.value('q_s'),
        hole: holeOf(hole),
      })),
    ),
    rounds: worked.rounds.map(({ before, compared, hole }, i) => ({
      round: i + 1,
      before: before.date,
      gain_m3_h: compared.value('d_ab'),
      gainShare: compared.value('s_ab'),
      hole: holeOf(hole),
      loggedArea_cm2: sized.reduce(
        (sum, leak, row) =>
          leak.fixedInRound === i + 1 && flows ? sum + (flows.column('A_h')[row] as number) : sum,
        0,
      ),
    })),
    directions: directionsInWords(worked, log),
    findings: leakFindings(record, log, worked),
  }
}

const holeOf = ({ seal, sizes }: WorkedHole): Hole => ({
  area_cm2: seal.value('A_s'),
  squareSide_mm: sizes.value('a_q'),
  roundDiameter_mm: sizes.value('d_q'),
})
