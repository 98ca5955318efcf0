import { generatedLogs } from '../log/generated/recipes/index.js'
import { scoreHalves } from '../log/generated/score/halves.js'
import { interpreter } from '../log/generated/score/interpreter.js'
import type { Verdict } from '../log/generated/score/score.js'

const VERDICTS: readonly Verdict[] = [
  'right',
  'justly asked',
  'needlessly asked',
  'guessed',
  'unsaid',
  'asked in vain',
  'refused',
  'silently wrong',
]

/** How many of the generated logs are read right, asked about, refused, or read wrong in silence. */
export async function run(): Promise<void> {
  console.log(
    `\nReading ${generatedLogs.length} generated logs of known truth (goal: right or justly asked ≥ 95 %, silently wrong 0)`,
  )
  for (const { half, scores, count, rightOrJustlyAsked, medianQuestions } of await scoreHalves(
    generatedLogs,
    interpreter,
  )) {
    const told = VERDICTS.flatMap((verdict) => (count(verdict) > 0 ? [`${count(verdict)} ${verdict}`] : []))
    console.log(
      `  ${half.padEnd(8)} ${scores.length} logs: ${(100 * rightOrJustlyAsked).toFixed(1)} % right or justly asked; ${told.join(', ')}; median ${medianQuestions} questions a log`,
    )
    // What fails in the half held out stays unknown: whoever looked would tune on it.
    if (half === 'tune')
      for (const { verdict, log, why } of scores)
        if (verdict !== 'right' && verdict !== 'justly asked')
          console.log(`    ${verdict}: ${log.name}: ${why}`)
  }
}
