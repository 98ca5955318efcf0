import { CautionKind } from '../../contract/record/index.js'

/** What to look for before the fan is switched on. Source: common practice, no source. Local codes and licensed practice decide. */
export const cautionTexts: Readonly<Record<CautionKind, string>> = {
  'fuel-burning appliances':
    'Make sure they are off and cold before the test, and watch flues during it. A fan can draw carbon monoxide into rooms. A competent person shuts them down and restores them.',
  'contaminated dust':
    'Asbestos, loose fill, mould, lead, soot: do not depressurise if it may be drawn in. Ask the owner what is known. If in doubt, do not test.',
  persons:
    'Put a notice on every door and keep one way out usable. Nobody goes in or out during a run. Animals and people with breathing difficulties leave, or are informed first.',
  'ceilings and membranes':
    'Raise the pressure slowly and stay at or below 100 Pa. Watch boards, suspended ceilings and membranes that are not yet covered.',
  'locked doors':
    'Secure doors that can slam or lock by themselves, and keep the keys at hand. Hold internal doors open. Release fire doors afterwards.',
  'fan and cables':
    'Keep the guard on the fan, and hands and clothes away. Keep cables out of the way. Two people lift heavy parts. Secure the frame against wind.',
  'safety systems':
    'Fire suppression, smoke extract, laboratories, health care: test only with permission from the owner and from the person in charge of the system.',
}

/** A caution as people read it; the record's own word for people is older. */
export const cautionName = (caution: CautionKind): string => (caution === 'persons' ? 'people' : caution)

export const allCautions: readonly CautionKind[] = CautionKind.options

export const CAUTIONS_DEFER = 'Local codes and licensed practice decide. This list replaces neither.'

/** The usual cautions, in short. Local codes and licensed practice decide. Source: common practice, no source. */
export const cautions: readonly string[] = [
  'Cautions: keep fuel-burning appliances off and cold during the test, watch flues, and beware of carbon monoxide. A competent person restores the appliances.',
  'Do not depressurise where asbestos, loose fill or contaminated dust may be drawn in.',
  'Raise the pressure slowly and stay at or below 100 Pa. Watch membranes and boards. Keep one exit usable.',
  'Intervals include only the scatter of the fit, not wind, calibration or preparation.',
  'Local codes and licensed practice decide.',
]
