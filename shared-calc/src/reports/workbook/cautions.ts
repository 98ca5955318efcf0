/** The usual cautions, in short. Local codes and licensed practice decide. Source: common practice, no source. */
export const cautions: readonly string[] = [
  'Cautions: fuel-burning appliances off and cold during the test, flues watched, carbon monoxide kept in mind; a competent person restores them.',
  'No depressurising where asbestos, loose fill or contaminated dust may be drawn in.',
  'Stay at or below 100 Pa, raise the pressure slowly, watch membranes and boards; keep one exit usable.',
  'Intervals show the scatter of the fit only, not wind, calibration or preparation.',
  'Local codes and licensed practice decide.',
]
