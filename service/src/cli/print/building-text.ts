import { type BuildingResult, counted, outcomeWords, ruleWords } from '@draughtbook/shared-calc'

const figure = (value: number): string => String(Number(value.toPrecision(4)))
const percent = (share: number): string => `${(100 * share).toFixed(0)} %`

/** A building of several homes, as printed. */
export function buildingText({ name, target, homes, ways, rule, outcome, findings }: BuildingResult): string {
  const { quantity, limit, unit, label } = target
  return [
    `${name}: ${outcomeWords[outcome]} (${label}: ${quantity} ${limit} ${unit}; ${ruleWords[rule]})`,
    ...homes.map(
      (home) => `  ${home.name}: ${figure(home.value)} ${unit}, ${outcomeWords[home.outcome]} (${home.file})`,
    ),
    `${counted(homes.length, 'home', 'homes')} together:`,
    ...ways.map(
      ({ rule: way, value, interval95: [low, high], judged, probability }) =>
        `  ${ruleWords[way]}: ${figure(value)} ${unit} (95 %: ${figure(low)} to ${figure(high)})${
          judged === value ? '' : `, compared with the limit as ${figure(judged)}`
        }; probability of meeting the limit ${percent(probability)}`,
    ),
    ...findings.map(({ severity, message }) => `${severity}: ${message}`),
  ].join('\n')
}
