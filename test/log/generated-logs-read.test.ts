import { describe, expect, it } from 'vitest'
import { generatedLogs } from './generated/recipes'
import { scoreHalves } from './generated/score/halves'
import { interpreter } from './generated/score/interpreter'

describe('logs that firms really keep', () => {
  it('are read right or justly asked about, and never wrong in silence, in the half tuned on and in the half held out', async () => {
    for (const { half, scores, count, rightOrJustlyAsked, medianQuestions } of await scoreHalves(
      generatedLogs,
      interpreter,
    )) {
      const wrong = scores.filter(({ verdict }) => verdict === 'silently wrong' || verdict === 'guessed')
      // Of the half held out only how many may be known.
      expect(
        half === 'tune' ? wrong.map(({ log, why }) => `${log.name}: ${why}`) : wrong.length,
        half,
      ).toEqual(half === 'tune' ? [] : 0)
      expect(count('unsaid'), `${half}: something left out was not named`).toBe(0)
      expect(rightOrJustlyAsked, half).toBeGreaterThanOrEqual(0.95)
      expect(medianQuestions, half).toBeLessThanOrEqual(1)
    }
  }, 120_000)
})
