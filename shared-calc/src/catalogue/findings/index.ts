import { assumptionTexts } from './assumptions.js'
import { buildingTexts } from './building.js'
import { conditionTexts } from './conditions.js'
import { curveTexts } from './curve.js'
import { instrumentTexts } from './instruments.js'
import { readingTexts } from './readings.js'
import { textTexts } from './texts.js'
import { zeroFlowTexts } from './zero-flow.js'

/** Every finding, once: how much it weighs, what it says and what to do. */
export const findingCatalogue = {
  ...assumptionTexts,
  ...buildingTexts,
  ...conditionTexts,
  ...curveTexts,
  ...instrumentTexts,
  ...readingTexts,
  ...textTexts,
  ...zeroFlowTexts,
} as const

export type FindingId = keyof typeof findingCatalogue
