import { counted } from '../../catalogue/words.js'
import type { Severity } from '../../contract/record/index.js'
import type { WorkedBuilding } from './work-building.js'

export interface BuildingFinding {
  readonly severity: Severity
  readonly message: string
  /** Files it is about. */
  readonly files: readonly string[]
}

/** What has to be said of several homes together. Findings of each home stand in its own summary. */
export function buildingFindings(worked: WorkedBuilding): BuildingFinding[] {
  return [
    ...notAsIssued(worked),
    ...ofRule(worked),
    ...ofSpaces(worked),
    ...ofInstruments(worked),
    ...ofSample(worked),
  ].sort((a, b) => severities.indexOf(a.severity) - severities.indexOf(b.severity))
}

/** The gravest first. */
const severities: readonly Severity[] = ['invalidates', 'caution', 'note']

const finding = (
  severity: Severity,
  message: string,
  homes: readonly { readonly file: string }[] = [],
): BuildingFinding => ({ severity, message, files: homes.map(({ file }) => file) })

function notAsIssued({ homes }: WorkedBuilding): BuildingFinding[] {
  const altered = homes.filter(({ altered }) => altered !== undefined)
  const invalid = homes.filter(({ outcome }) => outcome === 'not valid')
  return [
    ...altered.map((home) => finding('invalidates', `${home.file}: ${home.altered}`, [home])),
    ...(invalid.length > 0
      ? [finding('invalidates', `${counted(invalid.length, 'test is', 'tests are')} not valid.`, invalid)]
      : []),
  ]
}

function ofRule({ rule, ruleFrom, ways }: WorkedBuilding): BuildingFinding[] {
  const sampled = ways.some(({ sampled }) => sampled)
  return [
    ...(ruleFrom === 'asked for'
      ? []
      : [
          finding(
            'note',
            ruleFrom === 'the scheme of the target'
              ? 'The homes are combined by the rule of the target.'
              : 'This target has no rule for several homes, so each home must meet it. If your scheme has a rule, choose it with --rule.',
          ),
        ]),
    ...(sampled && rule !== 'each'
      ? [
          finding(
            'note',
            'Not every home was tested, so the figure is multiplied by the sampling factor of the scheme.',
          ),
        ]
      : []),
  ]
}

/** Where the flat next door was not held at the same pressure, leaks between the two count in both tests. */
function ofSpaces({ homes, rule }: WorkedBuilding): BuildingFinding[] {
  const kind = (wanted: string | undefined) => homes.filter((home) => home.adjoiningSpaces === wanted)
  const [guarded, unguarded, unknown] = [kind('guarded'), kind('unguarded'), kind(undefined)]
  if (guarded.length === homes.length) return []
  if (guarded.length > 0)
    return [
      finding(
        'caution',
        `${guarded.length} of ${homes.length} homes were tested with adjoining spaces guarded. The figures of the others include leaks to their neighbours.`,
        [...unguarded, ...unknown],
      ),
    ]
  const said =
    unguarded.length > 0
      ? 'Adjoining spaces were not guarded.'
      : 'It is not logged whether adjoining spaces were guarded.'
  return rule === 'each'
    ? [finding('note', `${said} Leaks to the homes next door are included.`, [...unguarded, ...unknown])]
    : [
        finding(
          'caution',
          `${said} Leaks between homes count in both, so the sum is more than the building leaks to outdoors.`,
          [...unguarded, ...unknown],
        ),
      ]
}

function ofInstruments({ contributions: { unnamed }, homes }: WorkedBuilding): BuildingFinding[] {
  if (unnamed.size === 0) return []
  return [
    finding(
      'note',
      `${counted(unnamed.size, 'test does', 'tests do')} not name the gauge or the flow device. The same ones are assumed.`,
      [...unnamed].flatMap((home) => homes[home] ?? []),
    ),
  ]
}

function ofSample({ sample, homes, homesInBuilding }: WorkedBuilding): BuildingFinding[] {
  const missing = homesInBuilding - homes.length
  if (!sample)
    return missing > 0
      ? [
          finding(
            'invalidates',
            `${homes.length} of ${homesInBuilding} homes were tested, and no sample size is known for this target. Give the one of your scheme with --sample-size.`,
          ),
        ]
      : []
  const more = sample.value('N_m')
  return more > 0
    ? [
        finding(
          'invalidates',
          `${counted(more, 'home has', 'homes have')} still to be tested: ${sample.value('N_n')} of ${homesInBuilding} are required.`,
        ),
      ]
    : []
}
