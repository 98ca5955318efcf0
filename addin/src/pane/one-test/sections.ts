import type { Section } from './section.js'
import { buildingSection } from './sections/building.js'
import { conditionsSection } from './sections/conditions.js'
import { curveSection } from './sections/curve.js'
import { deviceSection } from './sections/device.js'
import { exportSection } from './sections/export.js'
import { findingsSection } from './sections/findings.js'
import { leaksSection } from './sections/leaks.js'
import { planSection } from './sections/plan.js'
import { preparationSection } from './sections/preparation.js'
import { readingsSection } from './sections/readings.js'
import { resultSection } from './sections/result.js'
import { seriesSection } from './sections/series.js'
import { soFarSection } from './sections/so-far.js'
import { sureSection } from './sections/sure.js'
import { targetSection } from './sections/target.js'
import { testDetailsSection } from './sections/test-details.js'
import { volumeSection } from './sections/volume.js'
import { workingSection } from './sections/working.js'

/** The Test view from top to bottom. A new section is one import and one line here. */
export const sections: readonly Section[] = [
  resultSection,
  readingsSection,
  seriesSection,
  soFarSection,
  curveSection,
  findingsSection,
  sureSection,
  leaksSection,
  buildingSection,
  volumeSection,
  testDetailsSection,
  conditionsSection,
  deviceSection,
  targetSection,
  planSection,
  preparationSection,
  workingSection,
  exportSection,
]
