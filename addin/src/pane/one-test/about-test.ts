import type { TestAbout } from '../../kept/kept-test.js'
import { STAGE_WORDS, standingOf } from './standing.js'
import type { TestState } from './test-state.js'

/** What a list of tests shows of this one, read off its state. */
export function aboutTest(state: TestState): TestAbout {
  const { entries, result, evaluation } = state
  const { building, test } = (result?.draft ?? {}) as Record<string, Record<string, unknown> | undefined>
  const read = (value: unknown, path: string): string => {
    const entry = entries.fields[path]
    return typeof value === 'string' ? value : entry && 'text' in entry ? entry.text : ''
  }
  const date = read(test?.date, 'test.date')
  return {
    name: read(building?.name, 'building.name'),
    ...(date !== '' && { date }),
    step: state.step,
    standing: STAGE_WORDS[standingOf(state).stage],
    ...(result && { draft: result.draft }),
    ...(result?.record && { whole: true }),
    ...(evaluation && { airLeakageRate50_m3_h: evaluation.results.q50.value }),
  }
}
