import type { GeneratedLog } from '../generate.js'
import type { Reader } from './reader.js'
import { type Score, scoreLog, type Verdict } from './score.js'

export interface HalfScore {
  readonly half: GeneratedLog['half']
  readonly scores: readonly Score[]
  /** Share that is right at once or once what is open was asked and answered. */
  readonly rightOrJustlyAsked: number
  readonly medianQuestions: number
  count(verdict: Verdict): number
}

/** Scores both halves of the logs. */
export async function scoreHalves(logs: readonly GeneratedLog[], read: Reader): Promise<HalfScore[]> {
  const scores: Score[] = []
  for (const log of logs) scores.push(await scoreLog(log, read))
  return (['tune', 'held out'] as const).map((half) => {
    const own = scores.filter(({ log }) => log.half === half)
    const count = (verdict: Verdict) => own.filter((score) => score.verdict === verdict).length
    const questions = own.map((score) => score.questions).sort((one, other) => one - other)
    return {
      half,
      scores: own,
      count,
      rightOrJustlyAsked: (count('right') + count('justly asked')) / own.length,
      medianQuestions: questions[Math.floor(questions.length / 2)] ?? 0,
    }
  })
}
