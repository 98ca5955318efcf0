import { InputError, type Problem } from '@draughtbook/shared-calc'
import type { Question } from '@draughtbook/shared-calc/log'
import { quoted } from './quoted.js'

/** A log that leaves something open: nothing was calculated. Each problem is one question with the option that answers it. */
export class OpenQuestions extends InputError {
  constructor(
    readonly questions: readonly Question[],
    problems: readonly Problem[] = [],
  ) {
    super([...questions.map(asProblem), ...problems])
  }
}

function asProblem(question: Question): Problem {
  const { path, cells, text } = question
  return {
    path,
    ...(cells.length > 0 ? { cell: cells.slice(0, 4).join(', ') } : {}),
    message: `${text} ${howTo(question)}`,
  }
}

/** "Answer with --set flow.unit=cfm, or with l/s, or with m3/h"; where a value may be typed too, with an example of one. */
function howTo({ path, choices, example }: Question): string {
  const [first, ...others] = choices.map(({ value }) => quoted(value))
  if (first === undefined) return `Answer with, for example, --set ${path}=${quoted(example ?? 'VALUE')}.`
  const typed = example === undefined ? '' : `; or with your own value, for example ${quoted(example)}`
  return `Answer with --set ${path}=${first}${others.map((one) => `, or with ${one}`).join('')}${typed}.`
}
