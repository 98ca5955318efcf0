import {
  anyOf,
  type BuildingResult,
  type BuildingRule,
  buildingRules,
  counted,
  homesTargetText,
  outcomeWords,
  probabilityText,
  ruleWords,
  visible,
} from '@draughtbook/shared-calc'
import { InvalidArgumentError } from 'commander'
import { type ArchiveOptions, addArchiveOptions } from './archive-options.js'
import { checkOutput } from './checked-output.js'
import { type AddCommand, DIFFERENT } from './command.js'
import { UsageError } from './errors.js'
import { writeWorkbook } from './output-path.js'
import { recordsOf } from './run-files.js'

interface Options extends ArchiveOptions {
  readonly out?: string
  readonly name?: string
  readonly rule?: BuildingRule
  readonly homes?: number
  readonly sampleSize?: number
  readonly morePerMiss?: number
}

const rule = (text: string): BuildingRule => {
  const found = buildingRules.find((one) => one === text)
  if (!found) throw new InvalidArgumentError(`give ${anyOf(buildingRules)}`)
  return found
}

const count = (text: string): number => {
  if (!/^\d{1,5}$/.test(text)) throw new InvalidArgumentError('give a whole number')
  return Number(text)
}

export const addBuilding: AddCommand = (command, { terminal, end }) => {
  addArchiveOptions(command)
    .option('--out <BUILDING.xlsx>', 'where to write the workbook of the building; replaces an earlier one')
    .option('--name <NAME>', 'name of the building')
    .option(
      '--rule <RULE>',
      'how the homes are combined: each (every home by itself), summed (sum of the flows at the same pressure), or volume, envelope or floor (mean weighted by it)',
      rule,
    )
    .option('--homes <NUMBER>', 'number of homes in the building, if not all were tested', count)
    .option('--sample-size <NUMBER>', 'homes that the scheme requires to be tested', count)
    .option('--more-per-miss <NUMBER>', 'extra homes to test for each home that fails', count)
    .action(async (paths: string[], options: Options) => {
      const { out, name, rule: wanted, homes, sampleSize, morePerMiss } = options
      if (out === undefined && !options.json)
        throw new UsageError('name the workbook with --out BUILDING.xlsx, or use --json')
      if (out !== undefined) await checkOutput(out, 'building')
      const { assessBuilding } = await import('@draughtbook/shared-calc')
      const { records, unread } = await recordsOf(paths, options, terminal)
      const request = {
        name: name ?? records[0]?.record.building.site ?? 'Building',
        homes: records,
        ...(wanted !== undefined && { rule: wanted }),
        ...(homes !== undefined && { homesInBuilding: homes }),
        ...(sampleSize !== undefined && { sampleSize }),
        ...(morePerMiss !== undefined && { morePerMiss }),
      }
      const result = assessBuilding(request)
      if (out !== undefined) {
        const { writeBuildingWorkbook } = await import('@draughtbook/shared-calc/building')
        await writeWorkbook(out, () => writeBuildingWorkbook(request))
      }
      if (unread > 0) end(DIFFERENT)
      if (options.json) return terminal.out(JSON.stringify(result, null, 2))
      terminal.out(visible(buildingText(result, wanted)))
      if (out !== undefined) terminal.out(visible(`Building: ${out}`))
    })
}

/** Decimals that show a limit to four figures; every figure next to it has the same. */
const decimalsFor = (limit: number): number => Math.max(0, 3 - Math.floor(Math.log10(limit)))

const SEVERITY = { invalidates: 'Not valid', caution: 'Caution', note: 'Note' } as const

/** A building of several homes, as printed. */
function buildingText(
  { name, target, homes, ways, rule, outcome, findings }: BuildingResult,
  wanted: BuildingRule | undefined,
): string {
  const { unit } = target
  const figure = (value: number): string => value.toFixed(decimalsFor(target.limit))
  const alike = wanted === undefined || wanted === rule ? '' : `, here the same as the ${ruleWords[wanted]}`
  return [
    `${name}: ${outcomeWords[outcome]} (${homesTargetText(target)}; ${ruleWords[rule]}${alike})`,
    ...homes.map(
      (home) => `  ${home.name}: ${figure(home.value)} ${unit}, ${outcomeWords[home.outcome]} (${home.file})`,
    ),
    `${counted(homes.length, 'home', 'homes')} together:`,
    ...ways.map(
      ({ rule: way, value, interval95: [low, high], judged, probability }) =>
        `  ${ruleWords[way]}: ${figure(value)} ${unit} (95 %: ${figure(low)} to ${figure(high)})${
          judged === value ? '' : `, compared with the limit as ${figure(judged)}`
        }; probability of meeting the limit: ${probabilityText(probability)}`,
    ),
    ...findings.map(({ severity, message }) => `${SEVERITY[severity]}: ${message}`),
  ].join('\n')
}
