import type { Section } from './section.js'
import { cautionsSection } from './sections/cautions.js'
import { curveSection } from './sections/curve.js'
import { deviceSection } from './sections/device.js'
import { exportSection } from './sections/export.js'
import { findingsSection } from './sections/findings.js'
import { leakRoundSection } from './sections/leak-round.js'
import { leaksSection } from './sections/leaks.js'
import { planSection } from './sections/plan.js'
import { preparationSection } from './sections/preparation.js'
import { readingsSection } from './sections/readings.js'
import { resultSection } from './sections/result.js'
import { seriesSection } from './sections/series.js'
import { setUpSection } from './sections/set-up.js'
import { buildingSection, conditionsSection, logSection } from './sections/short-sections.js'
import { sureSection } from './sections/sure.js'
import { targetSection } from './sections/target.js'
import { testDetailsSection } from './sections/test-details.js'
import { volumeSection } from './sections/volume.js'
import { whileReadingSection } from './sections/while-reading.js'
import { workingSection } from './sections/working.js'

/** Every part of the Test view, in the order of the job. A new section is one import and one line here. */
export const sections: readonly Section[] = [
  buildingSection,
  volumeSection,
  targetSection,
  testDetailsSection,
  deviceSection,
  planSection,
  preparationSection,
  logSection,
  cautionsSection,
  setUpSection,
  leakRoundSection,
  conditionsSection,
  whileReadingSection,
  readingsSection,
  seriesSection,
  resultSection,
  curveSection,
  findingsSection,
  sureSection,
  leaksSection,
  exportSection,
  workingSection,
]
