import type { Evaluation } from '@draughtbook/shared-calc'
import { judgedTexts, limitedName, unitText } from '@draughtbook/shared-calc'
import { numberText } from './number-text.js'

interface Line {
  label: string
  text: string
}

/** Verdict, margin, ageing and the leakage still to seal. */
export function verdictLines({ verdict }: Evaluation): Line[] {
  const { target, outcome, criteria, ageing, leakageToSeal_cm2 } = verdict
  if (!target) return [{ label: 'Verdict', text: 'no target was set, so there is no pass or fail' }]
  const opening = {
    meets: `meets the target "${target.label}"`,
    misses: `fails the target "${target.label}"`,
    'not valid': `not valid, see the findings below; the target was "${target.label}"`,
    'no target': 'no target was set',
  }[outcome]
  return [
    { label: 'Verdict', text: opening },
    ...criteria.map((criterion) => ({ label: 'Margin', text: marginText(criterion) })),
    ...ageing.map(({ label, value, within, source }) => ({
      label: 'Ageing',
      text: `${label}: ${judgedTexts({ value, limit: target.limit, margin: target.limit - value }).value} ${unitText(target.unit)}, ${within ? 'still within' : 'above'} the limit [${source}]`,
    })),
    ...(leakageToSeal_cm2 === undefined ? [] : [{ label: 'Sealing', text: toSealText(leakageToSeal_cm2) }]),
  ]
}

type Criterion = Evaluation['verdict']['criteria'][number]

function marginText(criterion: Criterion): string {
  const { quantity, unit, margin, judged, referencePressure_Pa } = criterion
  const texts = judgedTexts(criterion)
  const printed = unitText(unit)
  const apart =
    margin === 0
      ? `equal to the limit of ${texts.limit} ${printed}`
      : `${texts.margin.slice(1)} ${printed} ${margin > 0 ? 'below' : 'above'} the limit of ${texts.limit} ${printed}`
  return `${limitedName(quantity, referencePressure_Pa)} (${judged}) is ${texts.value} ${printed}, ${apart}`
}

/** The area is that of a sharp-edged hole; a square of the same area is easier to picture. */
function toSealText(area_cm2: number): string {
  if (area_cm2 === 0) return 'none needed: the limit is met'
  const side = numberText(Math.sqrt(area_cm2), 2)
  return `about ${numberText(area_cm2, 2)} cm² still to seal (one hole of ${side} × ${side} cm)`
}
