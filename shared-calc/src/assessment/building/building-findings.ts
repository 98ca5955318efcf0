import type { Remark } from '../../catalogue/findings/remark.js'
import { homesText } from '../../catalogue/findings/several-homes.js'
import type { Severity } from '../../contract/record/index.js'
import type { WorkedBuilding } from './work-building.js'

export interface BuildingFinding {
  /** Id of the rule, as in the findings of a single test. */
  readonly rule: string
  readonly severity: Severity
  readonly message: string
  /** Files it is about. */
  readonly files: readonly string[]
}

/** Findings about several homes together. Those of each home are in its own summary. */
export function buildingFindings(worked: WorkedBuilding): BuildingFinding[] {
  return [
    ...notAsIssued(worked),
    ...testedTwice(worked),
    ...ofRule(worked),
    ...ofSpaces(worked),
    ...ofInstruments(worked),
    ...ofSample(worked),
  ].sort((a, b) => severities.indexOf(a.severity) - severities.indexOf(b.severity))
}

/** The most severe first. */
const severities: readonly Severity[] = ['invalidates', 'caution', 'note']

const finding = (
  { rule, severity, message, remedy }: Remark,
  homes: readonly { readonly file: string }[] = [],
): BuildingFinding => ({
  rule,
  severity,
  message: remedy === undefined ? message : `${message} ${remedy}`,
  files: homes.map(({ file }) => file),
})

function notAsIssued({ homes }: WorkedBuilding): BuildingFinding[] {
  const invalid = homes.filter(({ outcome }) => outcome === 'not valid')
  return [
    ...homes.flatMap((home) =>
      home.altered === undefined
        ? []
        : [finding(homesText('home-altered', { file: home.file, altered: home.altered }), [home])],
    ),
    ...(invalid.length > 0
      ? [finding(homesText('homes-not-valid', { count: invalid.length }), invalid)]
      : []),
  ]
}

/** A home counts once; of a fabric test and the last one, or of two issues, only one says how the home is now. */
function testedTwice({ homes }: WorkedBuilding): BuildingFinding[] {
  const byHome = new Map<string, (typeof homes)[number][]>()
  for (const home of homes) {
    const { site = '', name } = home.record.building
    const key = JSON.stringify([site, name].map((text) => text.trim().toLocaleLowerCase('en')))
    byHome.set(key, [...(byHome.get(key) ?? []), home])
  }
  const several = [...byHome.values()].filter(({ length }) => length > 1)
  const names = several.map(([home]) => home?.record.building.name ?? '')
  return several.length === 0 ? [] : [finding(homesText('homes-twice', { names }), several.flat())]
}

function ofRule({ rule, ruleFrom, ways }: WorkedBuilding): BuildingFinding[] {
  const sampled = ways.some(({ sampled }) => sampled)
  const ofTarget = ruleFrom === 'the scheme of the target'
  return [
    ...(ruleFrom === 'asked for'
      ? []
      : [finding(homesText(ofTarget ? 'homes-rule/of-target' : 'homes-rule/none'))]),
    ...(sampled && rule !== 'each' ? [finding(homesText('homes-sampled'))] : []),
  ]
}

/** Where the flat next door was not held at the same pressure, leaks between the two count in both tests. */
function ofSpaces({ homes, rule }: WorkedBuilding): BuildingFinding[] {
  const kind = (wanted: string | undefined) => homes.filter((home) => home.adjoiningSpaces === wanted)
  const [guarded, unguarded, unknown] = [kind('guarded'), kind('unguarded'), kind(undefined)]
  if (guarded.length === homes.length) return []
  const others = [...unguarded, ...unknown]
  if (guarded.length > 0)
    return [
      finding(homesText('homes-guarded/some', { guarded: guarded.length, homes: homes.length }), others),
    ]
  const logged = unguarded.length > 0
  return [
    finding(homesText(rule === 'each' ? 'homes-guarded/each' : 'homes-guarded/summed', { logged }), others),
  ]
}

function ofInstruments({ contributions: { unnamed }, homes }: WorkedBuilding): BuildingFinding[] {
  if (unnamed.size === 0) return []
  return [
    finding(
      homesText('homes-instruments', { count: unnamed.size }),
      [...unnamed].flatMap((home) => homes[home] ?? []),
    ),
  ]
}

function ofSample({ sample, homes, homesInBuilding }: WorkedBuilding): BuildingFinding[] {
  if (!sample)
    return homesInBuilding > homes.length
      ? [finding(homesText('homes-sample/unknown', { tested: homes.length, homes: homesInBuilding }))]
      : []
  const missing = sample.value('N_m')
  return missing > 0
    ? [
        finding(
          homesText('homes-sample/too-few', { missing, needed: sample.value('N_n'), homes: homesInBuilding }),
        ),
      ]
    : []
}
