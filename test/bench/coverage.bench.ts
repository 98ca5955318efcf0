import { mkdirSync, writeFileSync } from 'node:fs'
import { type Coverage, coverageAt } from './coverage.js'
import { coveragePicture } from './coverage-picture.js'

const TESTS = 2000
const winds_m_s = [0, 2, 4, 6]

const percent = (share: number) => `${(share * 100).toFixed(1)} %`.padStart(8)

/** How often the stated 95 % intervals hold the truth of simulated houses in wind. */
export function run(): Coverage[] {
  console.log(
    `\nShare of ${TESTS} simulated tests whose stated 95 % interval holds the truth (goal 93 to 97 % for the full budget)`,
  )
  console.log(
    '  wind     q50: fit scatter   full budget   ELA at 4 Pa: fit scatter   full budget   median U: q50, ELA4',
  )
  const coverages = winds_m_s.map((wind) => {
    const coverage = coverageAt(wind, TESTS)
    const { q50, ela4, useless } = coverage
    console.log(
      `  ${wind} m/s          ${percent(q50.fitScatter)}      ${percent(q50.budget)}                  ${percent(ela4.fitScatter)}      ${percent(ela4.budget)}      ${percent(q50.medianExpanded)} ${percent(ela4.medianExpanded)}${useless > 0 ? `   (${useless} tests could not be evaluated)` : ''}`,
    )
    return coverage
  })
  const folder = `${import.meta.dirname}/..`
  mkdirSync(folder, { recursive: true })
  writeFileSync(`${folder}/coverage.svg`, coveragePicture(coverages, TESTS))
  console.log('  drawn in test/output/coverage.svg')
  return coverages
}
