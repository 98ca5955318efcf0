import { runText } from '../../../catalogue/findings/log/runs.js'
import { questions } from '../../../catalogue/questions.js'
import type { Direction } from '../../../contract/record/index.js'
import { placeIn } from '../grid/view.js'
import type { FoundRun } from '../tables/runs.js'
import type { Figure } from '../tables/table-row.js'
import { says } from '../words/label.js'
import type { ZeroEntry } from '../zero-flow/entry.js'
import { zeroValuesIn } from '../zero-flow/in-text.js'
import type { Mention } from '../zero-flow/mentioned.js'
import type { ZeroFlowDoubts } from '../zero-flow/of-log.js'
import type { Rival } from '../zero-flow/rivals.js'
import type { Draft } from './draft.js'
import type { ZeroValues } from './zero-values.js'

interface Zeros {
  before?: ZeroValues
  after?: ZeroValues
}

const AS_READ = 'as read'
const NONE = 'none'

/**
 * The zero-flow pressures of a run as answered. Where a log has some that no run took, or speaks of them and none could be read for
 * this run, they are asked for: a lost zero flow changes the result by 1 to 2 %.
 */
export function askedZeroFlow(
  draft: Draft,
  run: FoundRun,
  index: number,
  direction: Direction | undefined,
  zeros: Zeros,
  doubts: ZeroFlowDoubts,
): Zeros {
  const path = `runs[${index}].zeroFlow`
  const answer = draft.answers[path]?.trim()
  const has = zeros.before !== undefined || zeros.after !== undefined
  if (answer !== undefined && answer !== AS_READ && answer !== NONE) return typed(draft, path, answer)
  if (answer === NONE) {
    draft.tell(runText('log-zero-answered/none'), run.block.pressure.headingCell, path)
    return {}
  }
  if (answer === AS_READ || run.block.pressure.role === 'induced') return zeros
  const { unused, rivals } = doubts
  const unstored = draft.unstored.filter(({ name }) => name === 'zero').map(({ cell }) => cell)
  if (unstored.length > 0 && !(zeros.before && zeros.after)) {
    const read = [...parts('before', zeros.before), ...parts('after', zeros.after)]
    draft.ask({ path, cells: unstored, ...questions.zeroFlowUnstored({ direction, cells: unstored, read }) })
    return zeros
  }
  const mention = nearest(doubts.mentions, run)
  if (unused.length > 0)
    draft.ask({
      path,
      cells: unused.flatMap(({ figures }) => figures.map(({ cell }) => cell)),
      ...questions.zeroFlowUnused({
        direction,
        labels: [...new Set(unused.map(({ label }) => label))],
        others: unused.flatMap(({ figures }) => figures.map(written)),
        instead: insteadOf(zeros, unused),
        both: togetherOf(zeros, unused),
        read: has ? [...parts('before', zeros.before), ...parts('after', zeros.after)] : undefined,
      }),
    })
  else if (!has && mention)
    draft.ask({
      path,
      cells: [mention.labelCell],
      ...questions.zeroFlowMissing({ direction, cell: mention.labelCell, label: mention.label }),
    })
  else if (has && says(run.block.pressure.label, 'zero')) {
    const heading = run.block.pressure.label.text
    const read = [...parts('before', zeros.before), ...parts('after', zeros.after)]
    draft.ask({
      path,
      cells: [run.block.pressure.headingCell],
      ...questions.zeroFlowInHeading({ direction, heading, read }),
    })
  } else if (rivals.length > 0) askRival(draft, path, direction, zeros, rivals)
  return zeros
}

/** Of several texts that speak of zero flow the last one above the readings of the run, else the first. */
function nearest(mentions: readonly Mention[], { view, bottom }: FoundRun): Mention | undefined {
  const placed = mentions.flatMap((mention) => {
    const place = placeIn(view, mention.labelCell)
    const isOfSheet = place && view.address(place.row, place.column) === mention.labelCell
    return isOfSheet && !view.turned && place.row <= bottom ? { mention, row: place.row } : []
  })
  return placed.sort((one, other) => other.row - one.row)[0]?.mention ?? mentions[0]
}

/** Zero flow that may be of the other run, or that only the other run has. */
function askRival(
  draft: Draft,
  path: string,
  direction: Direction | undefined,
  zeros: Zeros,
  rivals: readonly Rival[],
): void {
  const own = [...(zeros.before?.figures ?? []), ...(zeros.after?.figures ?? [])]
  const instead = rivals.flatMap((rival) => rival.instead ?? [])
  const exchanged = { ...zeros }
  for (const rival of rivals)
    if (rival.instead) exchanged[rival.which] = { figures: rival.instead.figures, unit: rival.instead.unit }
  const read = [...parts('before', zeros.before), ...parts('after', zeros.after)]
  const cells = [...own, ...instead.flatMap(({ figures }) => figures)].map(({ cell }) => cell)
  const lacks = rivals.find((rival) => rival.instead === undefined)?.which
  draft.ask({
    path,
    cells,
    ...(lacks
      ? questions.zeroFlowOneSided({ direction, read, lacks })
      : questions.zeroFlowRival({
          direction,
          cells,
          read,
          instead: [...parts('before', exchanged.before), ...parts('after', exchanged.after)],
        })),
  })
}

/** The values of the run with those that no run took in the place of what was read. */
function insteadOf(zeros: Zeros, unused: readonly ZeroEntry[]): string[] {
  const of = (which: 'before' | 'after'): string[] => {
    const own = unused.filter((entry) => entry.which === which).flatMap(({ figures }) => figures)
    return own.length > 0 ? parts(which, { figures: own, unit: undefined }) : parts(which, zeros[which])
  }
  return unused.every(({ which }) => which !== undefined)
    ? [...of('before'), ...of('after')]
    : unused.flatMap(({ figures }) => figures.map(written))
}

/** One value that was read and one that no run took, of which nothing says which came first. */
function togetherOf({ before, after }: Zeros, unused: readonly ZeroEntry[]): string[] | undefined {
  const own = unused.flatMap(({ figures }) => figures)
  if (!before || after || before.figures.length + own.length !== 2 || unused[0]?.which) return undefined
  return [...parts('before', before), ...parts('after', { figures: own, unit: undefined })]
}

const written = ({ value, unit }: Figure): string => `${value} ${unit?.unit ?? 'Pa'}`

const parts = (which: 'before' | 'after', values: ZeroValues | undefined): string[] =>
  (values?.figures ?? []).map((figure) => `${written(figure)} ${which}`)

function typed(draft: Draft, path: string, answer: string): Zeros {
  const found = zeroValuesIn(`: ${answer}`)
  if (!found) {
    draft.collector.refuse(
      'not-a-number',
      `"${answer.slice(0, 60)}" is not a zero-flow pressure: give one or two numbers in Pa, such as "-1.2 before, -0.8 after"`,
      undefined,
      path,
    )
    return {}
  }
  const of = (which: 'before' | 'after'): ZeroValues | undefined => {
    const own = found.filter((one) => (one.which ?? 'before') === which)
    return own.length > 0
      ? {
          figures: own.map(({ value, unit }) => ({ value, ...(unit ? { unit } : {}), cell: '' })),
          unit: undefined,
        }
      : undefined
  }
  const [before, after] = [of('before'), of('after')]
  draft.tell(runText('log-zero-answered', { answer }), '', path)
  return { ...(before ? { before } : {}), ...(after ? { after } : {}) }
}
