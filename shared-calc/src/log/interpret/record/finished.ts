import { InputError } from '../../../contract/problem.js'
import { parseRecord, type TestRecord } from '../../../contract/record/index.js'
import type { Grid } from '../../grid/grid.js'
import { LogError } from '../../problem.js'
import type { InterpretedTest, Use } from '../interpretation.js'
import type { FieldScope } from '../tests/scope.js'
import type { TestGroup } from '../tests/test-group.js'
import { checkResults, figuresOf } from './check-results.js'
import { contradictedSize } from './contradicted-size.js'
import type { Draft } from './draft.js'
import { resultsOfLog } from './result-of-log.js'

/** A test as it was read: with its record where nothing is open, else with the questions and problems. */
export function finished(
  draft: Draft,
  group: TestGroup,
  scope: FieldScope,
  grid: Grid,
): InterpretedTest & { uses: readonly Use[] } {
  const { collector, questions, uses } = draft
  const { building, runs = [] } = draft.record as {
    building?: { name?: string }
    runs?: { direction?: 'depressurisation' | 'pressurisation' }[]
  }
  const base = {
    key: group.key,
    name: building?.name ?? group.key,
    cells: collector.cells,
    questions,
    uses,
    series: draft.series,
    draft: draft.record,
    directions: runs.flatMap(({ direction }) => direction ?? []),
  }
  if (questions.length > 0 || collector.problems.length > 0)
    return {
      ...base,
      findings: collector.findings(),
      problems: collector.problems,
    }
  const record = parsed(draft)
  const results = resultsOfLog(scope)
  const figures = record && results.length > 0 ? figuresOf(record) : undefined
  const doubt = record && figures && contradictedSize(record, results, figures, draft.answers)
  if (doubt) return { ...base, questions: [doubt], findings: collector.findings(), problems: [] }
  return {
    ...base,
    ...(record ? { record } : {}),
    findings: [...grid.findings, ...collector.findings(), ...(figures ? checkResults(results, figures) : [])],
    problems: collector.problems,
  }
}

function parsed(draft: Draft): TestRecord | undefined {
  const { collector } = draft
  try {
    return parseRecord(draft.record, collector.cells)
  } catch (error) {
    if (!(error instanceof InputError) || error instanceof LogError) throw error
    for (const { path, cell, message, missing } of error.problems)
      collector.refuse('record-invalid', message, cell, path, missing && { missing })
    return undefined
  }
}
