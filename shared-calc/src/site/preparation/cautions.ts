import { CautionKind } from '../../contract/record/index.js'

/** What to look for before the fan is switched on. Source: common practice, no source. Local codes and licensed practice decide. */
export const cautionTexts: Readonly<Record<CautionKind, string>> = {
  'fuel-burning appliances':
    'Off and cold before the test, flues watched during it: a fan can draw carbon monoxide into rooms. A competent person shuts them down and restores them.',
  'contaminated dust':
    'Asbestos, loose fill, mould, lead, soot: do not depressurise where it may be drawn in. Ask the owner what is known; where in doubt, do not test.',
  persons:
    'Notices at every door; one usable way out; nobody goes in or out during a run. Animals and persons with breathing difficulties out, or told.',
  'ceilings and membranes':
    'Raise the pressure slowly, stay at or below 100 Pa, watch boards, suspended ceilings and membranes that are not yet covered.',
  'locked doors':
    'Doors that can slam or lock by themselves are held; keys at hand; internal doors held open. Fire doors are freed again afterwards.',
  'fan and cables':
    'Guard on the fan, hands and clothes away, cables out of the way; two persons lift what is heavy; frame secured against wind.',
  'safety systems':
    'Fire suppression, smoke extract, laboratories, health care: only with the permission of the owner and whoever is in charge of the system.',
}

export const allCautions: readonly CautionKind[] = CautionKind.options

export const CAUTIONS_DEFER = 'Local codes and licensed practice decide; this list replaces neither.'
