import { assumptionTexts } from './assumptions.js'
import { buildingTexts, textTexts } from './building.js'
import { conditionTexts } from './conditions.js'
import { curveTexts } from './curve.js'
import { instrumentTexts } from './instruments.js'
import { leakTexts } from './leaks.js'
import { pictureTexts } from './pictures.js'
import { planTexts } from './plan.js'
import { planWeatherTexts } from './plan-weather.js'
import { preparationTexts } from './preparation.js'
import { readingSpanTexts } from './reading-span.js'
import { readingTexts } from './readings.js'
import { takeOffTexts } from './take-off.js'
import { targetTexts } from './target.js'
import { uncertaintyTexts } from './uncertainty.js'
import { whileReadingTexts, zeroFlowTexts } from './zero-flow.js'

/** Every finding, once: how much it weighs, what it says and what to do. */
export const findingCatalogue = {
  ...assumptionTexts,
  ...buildingTexts,
  ...conditionTexts,
  ...curveTexts,
  ...instrumentTexts,
  ...readingTexts,
  ...readingSpanTexts,
  ...targetTexts,
  ...textTexts,
  ...zeroFlowTexts,
  ...leakTexts,
  ...pictureTexts,
  ...planTexts,
  ...planWeatherTexts,
  ...preparationTexts,
  ...takeOffTexts,
  ...uncertaintyTexts,
  ...whileReadingTexts,
} as const

export type FindingId = keyof typeof findingCatalogue
