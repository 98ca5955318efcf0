import { at50, type LimitRule, printedLimit, remembered, seen, type TargetPreset } from '../target.js'

const target = (
  id: string,
  label: string,
  scheme: string,
  edition: string,
  limits: readonly LimitRule[],
  more: Partial<TargetPreset> = {},
): TargetPreset => ({
  id,
  label,
  scheme,
  edition,
  directions: 'any',
  satisfiedBy: 'any',
  area: 'enclosure area, floor to the ground included',
  limits,
  ...more,
})

const code = 'US model code'
const before = seen('US model energy code, editions before 2021')
const iecc2021 = seen('IECC 2021, as restated on a trade page')
const ny2025 = seen('2025 ECCCNYS [NY] R402.5.1.2–.3, from the 2024 model code')
const iecc2024 = remembered('IECC 2024')

const perArea = (value: number, source = ny2025): LimitRule => printedLimit('qE50', value, 'cfm/ft2', source)

export const unitedStates: readonly TargetPreset[] = [
  target('us-zones-1-2', 'US model code before 2021, zones 1 and 2', code, 'before 2021', [
    at50('n50', 5, before),
  ]),
  target('us-zones-3-8', 'US model code before 2021, zones 3 to 8', code, 'before 2021', [
    at50('n50', 3, before),
  ]),
  target('us-2021', 'US model code 2021, prescriptive', code, '2021', [
    at50('n50', 3, iecc2021),
    perArea(0.28, iecc2021),
  ]),
  target('us-2021-cap', 'US model code 2021, highest by any route', code, '2021', [
    at50('n50', 5, remembered('IECC 2021')),
  ]),
  target('us-2024-zones-0-2', 'US model code 2024, zones 0 to 2', code, '2024', [at50('n50', 4, iecc2024)]),
  target(
    'us-2024-zones-3-5',
    'US model code 2024, zones 3 to 5',
    code,
    '2024',
    [at50('n50', 3, ny2025), perArea(0.19)],
    { notes: ['Read for zones 4 and 5; zone 3 is from memory.'] },
  ),
  target(
    'us-2024-zones-6-8',
    'US model code 2024, zones 6 to 8',
    code,
    '2024',
    [at50('n50', 2.5, ny2025), perArea(0.16)],
    { notes: ['Read for zone 6; zones 7 and 8 are from memory.'] },
  ),
  target(
    'us-units',
    'US dwelling units, 0.30 cfm50/ft² of enclosure',
    'US, single dwelling units',
    'Minn. R. 1323.0543',
    [printedLimit('qE50', 0.3, 'cfm/ft2', seen('Minn. R. 1323.0543'))],
    {
      adjoiningSpaces: {
        accepted: ['unguarded'],
        otherwise: 'invalidates',
        source: seen('Minn. R. 1323.0543'),
      },
      notes: [
        'For 8 units or more, 7 units or 20 % are tested, whichever is more. Their weighted mean counts. For each failure, two more are tested.',
      ],
    },
  ),
  target('us-commercial', 'US commercial buildings, before 2024', 'US, commercial', 'before 2024', [
    printedLimit('qE_pr', 0.4, 'cfm/ft2', seen('IECC C402.5'), 75),
  ]),
  target('us-commercial-2024', 'US commercial buildings 2024', 'US, commercial', '2024', [
    printedLimit('qE_pr', 0.35, 'cfm/ft2', seen('trade page on the 2024 commercial code'), 75),
  ]),
  target('us-army', 'US Army buildings', 'US Army', '2009', [
    printedLimit('qE_pr', 0.25, 'cfm/ft2', seen('ASHRAE Journal 4/2009'), 75),
  ]),
  target('us-passive', 'US passive building standard', 'US passive buildings', '2018 and later', [
    printedLimit('qE50', 0.06, 'cfm/ft2', seen('US trade page on passive building standards')),
  ]),
]
