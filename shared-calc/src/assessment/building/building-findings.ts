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
      ? [finding('invalidates', `${counted(invalid.length, 'test is', 'tests are')} not valid`, invalid)]
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
              ? 'the homes are combined as the scheme of the target does'
              : 'no rule for several homes is known for this target, so each home must meet it on its own; choose another rule if the scheme has one',
          ),
        ]),
    ...(sampled && rule !== 'each'
      ? [
          finding(
            'note',
            'not every home was tested, so the figure is multiplied by the factor of the scheme',
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
        `${guarded.length} of ${homes.length} homes were tested with adjoining spaces guarded, the others were not: their figures do not measure the same leaks`,
        [...unguarded, ...unknown],
      ),
    ]
  const said = unguarded.length > 0 ? 'were not guarded' : 'are not said to have been guarded'
  return rule === 'each'
    ? [
        finding(
          'note',
          `adjoining spaces ${said}: leaks to the homes next door count with those to outdoors`,
          [...unguarded, ...unknown],
        ),
      ]
    : [
        finding(
          'caution',
          `adjoining spaces ${said}: leaks between homes count in both, so the sum is more than the building leaks to outdoors`,
          [...unguarded, ...unknown],
        ),
      ]
}

function ofInstruments({ contributions: { unnamed }, homes }: WorkedBuilding): BuildingFinding[] {
  if (unnamed.size === 0) return []
  return [
    finding(
      'note',
      `${counted(unnamed.size, 'test does', 'tests do')} not name gauge or flow device; they are taken to have used the same ones`,
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
            `${homes.length} of ${homesInBuilding} homes were tested, and the catalogue has no sample size of this target: give the size your scheme asks for`,
          ),
        ]
      : []
  const more = sample.value('N_m')
  return more > 0
    ? [
        finding(
          'invalidates',
          `${counted(more, 'home', 'homes')} still to be tested: ${sample.value('N_n')} of ${homesInBuilding} are required`,
        ),
      ]
    : []
}
