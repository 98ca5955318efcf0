import type { TakeOffRequest, TakeOffResult, Total } from '@draughtbook/shared-calc'
import { capital, placeWords, unitText } from '@draughtbook/shared-calc'
import { findingsText } from './findings-text.js'

const WIDTH = 26

/** A field of a stated total ends in its unit. */
const unitOf = (field: string): string => (field.endsWith('_m3') ? 'm³' : 'm²')

/** A take-off in plain words: totals with their uncertainty, the bases, the plan's own totals, findings. */
export function takeOffText(request: TakeOffRequest, result: TakeOffResult): string {
  const { netVolume, overallInternalVolume, floorArea, envelopeArea, elements, stated, bases } = result
  const line = (label: string, total: Total | undefined) =>
    total
      ? [
          `${label.padEnd(WIDTH)}${total.value.toFixed(2)} ${unitText(total.unit)} (standard uncertainty ${total.standardUncertainty.toFixed(2)} ${unitText(total.unit)})`,
        ]
      : [`${label.padEnd(WIDTH)}not in the take-off`]
  return [
    request.name,
    '',
    ...line('Net internal volume', netVolume),
    ...line('Overall internal volume', overallInternalVolume),
    ...line('Floor area', floorArea),
    ...line('Envelope area', envelopeArea),
    ...elements.flatMap(({ kind, area }) => line(`  ${kind}`, area)),
    ...stated.map(
      ({ field, from, workedOut, stated: said, relativeDifference }) =>
        `${capital(placeWords(`takeOff.stated.${field}`, {})).padEnd(WIDTH)}${said.toFixed(2)} ${unitOf(field)} in ${from}; take-off ${workedOut.toFixed(2)} ${unitOf(field)} (${(relativeDifference * 100).toFixed(1).replace('-', '−')} %)`,
    ),
    '',
    ...bases,
    '',
    findingsText(result.findings, request),
  ].join('\n')
}
