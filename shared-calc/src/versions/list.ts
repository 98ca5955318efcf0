import { CALCULATION_VERSION } from '../catalogue/calculation-version.js'
import * as current from './current.js'
import type { KnownVersion, SeveralParts, VersionParts } from './version.js'

/**
 * Every calculation version ever issued, oldest first; the last is the current one. When the version rises, the old
 * one is frozen first (`npm run freeze -w shared-calc`) and stays in this list, so that its workbooks still re-run to
 * the last cell. A frozen version is one generated file, loaded only when a workbook of that version is re-run.
 */
export const versions: readonly KnownVersion[] = [
  {
    version: '1.0.0',
    changed: 'first version',
    load: async () => ({
      ...((await import('./frozen/v1_0_0.js')) as unknown as VersionParts),
      withoutPartDigests: true,
    }),
  },
  {
    version: '1.1.0',
    changed:
      'air flows may be stated for reference air; ANSI/RESNET/ICC 380 takes the nominal flow; limits and areas by edition; values equal to a limit within 1e-9 meet it; the uncertainty budget counts unlike openings, stack pressure and a pooled zero flow',
    load: async () => (await import('./frozen/v1_1_0.js')) as unknown as VersionParts,
  },
  {
    version: '1.2.0',
    changed:
      'plainer wording of findings and labels; sheet Check compares everything Summary shows; the test report has a table of instruments and lines to fill in by hand; no figure changes',
    load: async () => (await import('./frozen/v1_2_0.js')) as unknown as VersionParts,
  },
  {
    version: '1.3.0',
    changed: 'plainer wording of findings; no figure changes',
    load: async () => (await import('./frozen/v1_3_0.js')) as unknown as VersionParts,
  },
  {
    version: '1.4.0',
    changed:
      'plainer wording of findings, labels and sheets; where a target limits an area, the leakage to seal also has its air flow; no figure changes',
    load: async () => (await import('./frozen/v1_4_0.js')) as unknown as VersionParts,
    loadSeveral: async () => (await import('./frozen/several_v1_4_0.js')) as unknown as SeveralParts,
  },
  {
    version: '1.5.0',
    changed: 'plainer wording of findings, labels and sheets; no figure changes',
    load: async () => (await import('./frozen/v1_5_0.js')) as unknown as VersionParts,
    loadSeveral: async () => (await import('./frozen/several_v1_5_0.js')) as unknown as SeveralParts,
  },
  {
    version: '1.6.0',
    changed:
      'the uncertainty budget takes the accuracies stated for gauge, flow device and thermometer in place of defaults, and counts a step between ranges of the flow device; a reading less than 1.5 % off the curve is no outlier; new findings: volume against areas, barometer against altitude, zero-flow pressure changed during a run, identical runs; plainer wording',
    load: async () => (await import('./frozen/v1_6_0.js')) as unknown as VersionParts,
    loadSeveral: async () => (await import('./frozen/several_v1_6_0.js')) as unknown as SeveralParts,
  },
  {
    version: '1.7.0',
    changed:
      'new finding: zero-flow pressures that repeat those of another run; plainer wording of findings, labels and sheets; no figure changes',
    load: async () => (await import('./frozen/v1_7_0.js')) as unknown as VersionParts,
    loadSeveral: async () => (await import('./frozen/several_v1_7_0.js')) as unknown as SeveralParts,
  },
  {
    version: '1.8.0',
    changed:
      'new findings: zero-flow pressures that are all exactly 0, that have the wrong sign, or that were subtracted already; a reading is an outlier at a limit shared by all readings of its run, and only beyond three times the scatter expected at its pressure; where the record states no accuracy, the uncertainty budget of an EN 13829 test takes what the method allows flow device and thermometer; the test report says of the intervals of the curve that they hold only the scatter of the fit; plainer wording of findings, labels and sheets; no result changes',
    load: async () => (await import('./frozen/v1_8_0.js')) as unknown as VersionParts,
    loadSeveral: async () => (await import('./frozen/several_v1_8_0.js')) as unknown as SeveralParts,
  },
  {
    version: '1.9.0',
    changed: 'plainer wording of findings, labels and sheets; no figure changes',
    load: async () => (await import('./frozen/v1_9_0.js')) as unknown as VersionParts,
  },
  {
    version: '1.10.0',
    changed: 'plainer wording of findings, labels and sheets; no figure changes',
    load: async () => (await import('./frozen/v1_10_0.js')) as unknown as VersionParts,
  },
  {
    version: '1.11.0',
    changed: 'new question: a reading of a log that is about ten times off its curve; no figure changes',
    load: async () => (await import('./frozen/v1_11_0.js')) as unknown as VersionParts,
  },
  {
    version: '1.12.0',
    changed:
      'new notes on logs: readings that are a corrected copy of others, and numbers in hidden rows or columns that were not used; plainer wording of findings, labels and sheets; no figure changes',
    load: async () => (await import('./frozen/v1_12_0.js')) as unknown as VersionParts,
  },
  {
    version: '1.13.0',
    changed:
      'new finding: leakage that changed from one reading to the next; the preparation is read from logs without a layout; plainer wording of findings, labels and sheets; no figure changes',
    load: async () => (await import('./frozen/v1_13_0.js')) as unknown as VersionParts,
  },
  {
    version: CALCULATION_VERSION,
    changed:
      'where a target compares rounded values and its limit has more decimal places than that, the leakage to seal and the probability count from the largest rounded value that meets it; in the stages of a site, where a target rounds or takes a sample, what is allowed and left counts from the largest figure that meets it; plainer wording of findings, labels and sheets; no other figure changes',
    ...current,
  },
]
