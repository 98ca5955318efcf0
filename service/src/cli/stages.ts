import {
  counted,
  probabilityText,
  type SiteStage,
  type StageResult,
  siteStages,
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
  readonly allow?: Readonly<Record<SiteStage, number>>
  readonly confidence?: number
}

const percent = (text: string): number => {
  const number = text.replace('%', '').trim()
  const value = Number(number)
  if (!/^\d{1,3}(\.\d+)?$/.test(number) || value <= 0 || value > 100)
    throw new InvalidArgumentError('give a percentage from 1 to 100')
  // 0.8 is a share: taken as 0.8 %, it would let nearly every trade start.
  if (value < 1)
    throw new InvalidArgumentError(
      `${number} is below 1 %: for ${Number((value * 100).toPrecision(6))} % give ${Number((value * 100).toPrecision(6))}`,
    )
  return value / 100
}

const allow = (text: string): Readonly<Record<SiteStage, number>> => {
  const [fabric, services, none] = text.split(',')
  if (fabric === undefined || services === undefined || none !== undefined)
    throw new InvalidArgumentError('give two percentages, for fabric and after services, such as 70,90')
  const shares = { fabric: percent(fabric), 'after services': percent(services), acceptance: 1 }
  if (shares.fabric > shares['after services'])
    throw new InvalidArgumentError('the second percentage must be at least as high as the first')
  return shares
}

const sure = (text: string): number => {
  const value = percent(text)
  if (value === 1) throw new InvalidArgumentError('no test is certain: give a percentage below 100')
  return value
}

/** One test of a plot, as printed. */
function stageText(result: StageResult): string {
  const { plot, stage, decision, measured_m3_h, allowed_m3_h, left_m3_h, left_cm2, probability, why } = result
  const side = left_m3_h < 0 ? 'above the target' : 'below the target'
  const rest = `${Math.abs(left_m3_h).toFixed(1)} m³/h or ${Math.abs(left_cm2).toFixed(0)} cm² ${side}`
  const found = `${measured_m3_h.toFixed(1)} m³/h measured, ${allowed_m3_h.toFixed(1)} m³/h allowed at this stage; ${rest}; probability of being within: ${probabilityText(probability)}`
  return `${plot}, ${stage}: ${decision} (${found})${why === undefined ? '' : `: ${why}`}`
}

export const addStages: AddCommand = (command, { terminal, end }) => {
  addArchiveOptions(command)
    .option('--out <STAGES.xlsx>', 'where to write the workbook of the stages; replaces an earlier one')
    .option('--allow <70,90>', 'percentage of the target allowed at fabric and after services', allow)
    .option('--confidence <80>', 'probability, as a percentage, needed before the next trade starts', sure)
    .action(async (paths: string[], options: Options) => {
      const { out, allow: shares, confidence } = options
      if (out === undefined && !options.json)
        throw new UsageError('name the workbook with --out STAGES.xlsx, or use --json')
      if (out !== undefined) await checkOutput(out, 'stages')
      const { stagesResult, workStages } = await import('@draughtbook/shared-calc')
      const { records, unread } = await recordsOf(paths, options, terminal)
      const request = {
        tests: records,
        ...(shares !== undefined && { shares }),
        ...(confidence !== undefined && { confidence }),
      }
      const result = stagesResult(workStages(request))
      if (out !== undefined) {
        const { writeStagesWorkbook } = await import('@draughtbook/shared-calc/stages')
        await writeWorkbook(out, () => writeStagesWorkbook(request))
      }
      if (unread > 0) end(DIFFERENT)
      if (options.json) return terminal.out(JSON.stringify(result, null, 2))
      for (const stage of result.stages) terminal.out(visible(stageText(stage)))
      for (const { file, why } of result.leftOut) terminal.err(`${file}: not used: ${why}`)
      const plots = new Set(result.stages.map(({ plot }) => plot)).size
      const per = (share: number) => `${Number((100 * share).toFixed(1))} %`
      const allowed = siteStages.slice(0, -1).map((stage) => `${stage} ${per(result.shares[stage])}`)
      terminal.out(
        `${counted(plots, 'plot')}. Share of the target allowed: ${allowed.join(', ')}. Probability needed: ${per(result.confidence)}`,
      )
      if (out !== undefined) terminal.out(visible(`Stages: ${out}`))
    })
}
