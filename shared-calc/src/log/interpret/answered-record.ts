import { parseRecord, type TestRecord } from '../../contract/record/index.js'
import { setPath } from '../layout/set-path.js'
import { LogError, problem } from '../problem.js'
import { readAnswers } from './answers.js'
import type { Answers } from './interpretation.js'
import { Draft } from './record/draft.js'

/**
 * A record with some of its fields given anew, each checked like a typed cell.
 * @throws LogError naming each answer that cannot be used
 */
export function answeredRecord(record: TestRecord, given: Answers): TestRecord {
  const { answers, problems } = readAnswers(given)
  const draft = new Draft(answers)
  const changed = JSON.parse(JSON.stringify(record)) as Record<string, unknown>
  for (const path of Object.keys(answers)) {
    if (!/^(building|test|conditions|target)\./.test(path)) {
      problems.push(
        problem('layout-invalid', 'this can only be set for a test log that is read without a layout', {
          path,
        }),
      )
      continue
    }
    const value = draft.answered(path)
    if (path === 'target.preset' && value !== undefined) changed.target = { preset: value }
    else if (value !== undefined) setPath(changed, path, value)
  }
  const all = [...problems, ...draft.collector.problems]
  if (all.length > 0) throw new LogError(all)
  return parseRecord(changed)
}
