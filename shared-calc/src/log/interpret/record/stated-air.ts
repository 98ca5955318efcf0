import { fieldText } from '../../../catalogue/findings/log/fields.js'
import { runText } from '../../../catalogue/findings/log/runs.js'
import { questions } from '../../../catalogue/questions.js'
import type { Direction } from '../../../contract/record/index.js'
import { Calculation } from '../../../engine/index.js'
import { normalFlow } from '../../../formulas/normal-flow.js'
import type { View } from '../grid/view.js'
import type { FoundRun } from '../tables/runs.js'
import { readLabel, says } from '../words/label.js'
import { airOfFlows } from './air-of-flows.js'
import type { Draft } from './draft.js'

const PATH = 'flowStatedAt'
const NORMAL_AIR = 'normal air'

/** Whether the flows are stated for air at 0 °C, as somebody answered. */
export const isNormalAir = ({ answers }: Draft): boolean => answers[PATH] === NORMAL_AIR

/** What the flows are flows of, where the log speaks of a standard state: two meanings, so it is asked. */
export function putStatedAir(
  draft: Draft,
  runs: readonly FoundRun[],
  forms: readonly View[],
  directions: readonly (Direction | undefined)[],
): void {
  const flows = runs.filter(({ block }) => block.carriers[0]?.role !== 'device')
  if (flows.length === 0) return
  const answer = draft.answers[PATH]
  if (answer === 'device air' || answer === 'reference air' || answer === NORMAL_AIR) {
    const stated = answer === NORMAL_AIR ? 'reference air' : answer
    for (const [index, run] of runs.entries())
      if (flows.includes(run)) draft.put(`runs[${index}].flowStatedAt`, stated)
    if (answer === NORMAL_AIR)
      draft.tell(runText('log-normal-flow', { factor: fromNormalAir(1).factor }), '', PATH)
    draft.tell(fieldText('log-answer', { field: 'air the flows are stated for', answer }), '', PATH)
    return
  }
  if (answer !== undefined)
    draft.collector.refuse(
      'unknown-word',
      `answer "device air", "reference air" or "${NORMAL_AIR}", not "${answer}"`,
      undefined,
      PATH,
    )
  const stated = airOfFlows([...new Set([...flows.map(({ view }) => view), ...forms])], directions)
  if (stated?.air) {
    for (const [index, run] of runs.entries())
      if (flows.includes(run)) draft.put(`runs[${index}].flowStatedAt`, stated.air)
    draft.tell(runText('log-air-of-flows', { text: stated.text, air: stated.air }), stated.cell, PATH)
    return
  }
  const unread = unreadHeadings(runs)
  const said = stated ?? headingOf(flows) ?? flows.map((run) => saidNear(run, unread)).find((one) => one)
  if (!said) return
  draft.ask({
    path: PATH,
    cells: [said.cell],
    ...questions.flowStatedAt(said),
  })
}

interface Said {
  readonly text: string
  readonly cell: string
}

function headingOf(runs: readonly FoundRun[]): Said | undefined {
  const column = runs.flatMap(({ block }) => block.carriers).find(({ role }) => role === 'corrected')
  if (column) return { text: column.label.text, cell: column.headingCell }
  const standard = runs.flatMap(({ block }) => block.carriers).find(({ unit }) => unit?.standardState)
  return standard && { text: 'a flow at a standard state', cell: standard.headingCell }
}

/** The heading of a flow that is not read speaks of that one only. */
const unreadHeadings = (runs: readonly FoundRun[]): ReadonlySet<string> =>
  new Set(
    runs.flatMap(({ block: { segment, carriers } }) =>
      segment.columns
        .filter(({ at }) => carriers.every((one) => one.at !== at))
        .map(({ headingCell }) => headingCell),
    ),
  )

const MOST_CHARACTERS = 160

/** "Flows are at 20 °C and 1013 mbar", anywhere on the sheet of the readings, but not with a value of its own beside it. */
function saidNear({ view, bottom }: FoundRun, unread: ReadonlySet<string>): Said | undefined {
  for (let row = 0; row < Math.min(view.rows, bottom + 12); row++)
    for (let column = 0; column < Math.min(view.columns, 30); column++) {
      const text = view.text(row, column)
      if (text === undefined || text.length > MOST_CHARACTERS || view.number(row, column + 1) !== undefined)
        continue
      if (unread.has(view.address(row, column))) continue
      const label = readLabel(text)
      if (!says(label, 'flow') || says(label, 'zero') || label.tokens.length < 4) continue
      const state = STATE.test(text)
      if (
        state ||
        label.padded.includes(' standard conditions ') ||
        label.padded.includes(' normbedingungen ')
      )
        return { text, cell: view.address(row, column) }
    }
  return undefined
}

/** Figures of the usual standard state with their units: 20 °C, 1013 hPa, 1.2 kg/m³. */
const STATE = /\b(?:20 ?°C|1013(?:[.,]25)? ?(?:hPa|mbar)|101[.,]3(?:25)? ?kPa|101 ?325 ?Pa|1[.,]20?4?1? ?kg)/

/** Reference air of the standards, °C. Source: ISO 9972:2015 (value from memory). */
const REFERENCE_C = 20

/**
 * A flow stated for air at 0 °C and 101 325 Pa as the flow of the same air at 20 °C.
 * @param flow - m³/h
 * @returns the flow in m³/h, and by what it was multiplied
 */
export function fromNormalAir(flow: number): { flow: number; factor: number } {
  const block = new Calculation().add('normal', normalFlow.title, normalFlow, {
    q_N: { value: flow, origin: { kind: 'rule', reason: 'flow of the log' } },
    theta_r: { value: REFERENCE_C, origin: { kind: 'rule', reason: 'reference air' } },
  })
  return { flow: block.value('q_r'), factor: block.value('f_N') }
}
