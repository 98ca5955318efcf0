import type { CellMap } from '../../contract/problem.js'
import { type Finding, parseRecord, type TestRecord } from '../../contract/record/index.js'
import { setPath } from '../layout/set-path.js'
import { LogError, problem } from '../problem.js'
import { readAnswers } from './answers.js'
import type { Answers } from './interpretation.js'
import { isForField } from './record/before.js'
import { Draft } from './record/draft.js'

/** A test as it was read: from a log, a workbook or a file of JSON. */
interface Read {
  readonly record: TestRecord
  /** Field path → cell address. */
  readonly cells: CellMap
  readonly findings: readonly Finding[]
}

/**
 * A test with some fields of its record replaced, each checked like a typed cell. What an answer replaces is named, and the cell it
 * came from.
 * @throws LogError naming each answer that cannot be used
 */
export function testWithAnswers<Test extends Read>(test: Test, given: Answers = {}): Test {
  if (Object.keys(given).length === 0) return test
  const { answers, problems } = readAnswers(given)
  const draft = new Draft(answers, [], test)
  const changed = JSON.parse(JSON.stringify(test.record)) as Record<string, unknown>
  const cells: Record<string, string> = { ...test.cells }
  for (const path of Object.keys(answers)) {
    if (!isForField(path)) {
      problems.push(
        problem('layout-invalid', 'this can only be set for a test log that is read without a layout', {
          path,
        }),
      )
      continue
    }
    const value = draft.answered(path)
    if (value === undefined) continue
    if (path === 'target.preset') changed.target = { preset: value }
    else setPath(changed, path, value)
    delete cells[path]
  }
  const all = [...problems, ...draft.collector.problems]
  if (all.length > 0) throw new LogError(all)
  return {
    ...test,
    record: parseRecord(changed),
    cells,
    findings: [...test.findings, ...draft.collector.findings()],
  }
}
