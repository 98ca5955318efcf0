/** The usual cautions, in short. Local codes and licensed practice decide. Source: common practice, no source. */
export const cautions: readonly string[] = [
  'Cautions: keep fuel-burning appliances off and cold during the test, watch flues, and beware of carbon monoxide. A competent person restores the appliances.',
  'Do not depressurise where asbestos, loose fill or contaminated dust may be drawn in.',
  'Raise the pressure slowly and stay at or below 100 Pa. Watch membranes and boards. Keep one exit usable.',
  'Intervals include only the scatter of the fit, not wind, calibration or preparation.',
  'Local codes and licensed practice decide.',
]
