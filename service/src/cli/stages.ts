import { counted, probabilityText, type SiteStage, siteStages } from '@draughtbook/shared-calc'
import { InvalidArgumentError } from 'commander'
import { type ArchiveOptions, addArchiveOptions } from './archive-options.js'
import { type AddCommand, DIFFERENT } from './command.js'
import { UsageError } from './errors.js'
import { writeWorkbook } from './output-path.js'
import { recordsOf } from './run-files.js'
import { shown } from './terminal.js'

interface Options extends ArchiveOptions {
  readonly out?: string
  readonly allow?: Readonly<Record<SiteStage, number>>
  readonly confidence?: number
}

const percent = (text: string): number => {
  const value = Number(text)
  if (!/^\d{1,3}(\.\d+)?$/.test(text.trim()) || value <= 0 || value > 100)
    throw new InvalidArgumentError('give a percentage above 0, at most 100')
  return value / 100
}

const allow = (text: string): Readonly<Record<SiteStage, number>> => {
  const [fabric, services, none] = text.split(',')
  if (fabric === undefined || services === undefined || none !== undefined)
    throw new InvalidArgumentError('give two percentages, for fabric and after services, such as 70,90')
  return { fabric: percent(fabric), 'after services': percent(services), acceptance: 1 }
}

export const addStages: AddCommand = (command, { terminal, end }) => {
  addArchiveOptions(command)
    .option('--out <STAGES.xlsx>', 'where to write the workbook of the stages; replaces an existing file')
    .option('--allow <70,90>', 'per cent of the target that may be used at fabric and after services', allow)
    .option('--confidence <80>', 'probability in per cent that the next trade needs to start', percent)
    .action(async (paths: string[], options: Options) => {
      const { out, allow: shares, confidence } = options
      if (out === undefined && !options.json)
        throw new UsageError('name the workbook with --out STAGES.xlsx, or use --json')
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
      for (const stage of result.stages)
        terminal.out(
          shown(
            `${stage.plot}, ${stage.stage}: ${stage.decision} (${Math.round(100 * stage.shareUsed)} % of the target used, ${stage.left_m3_h.toFixed(0)} m³/h or ${stage.left_cm2.toFixed(0)} cm² left; probability of keeping within it: ${probabilityText(stage.probability)})${stage.why === undefined ? '' : `: ${stage.why}`}`,
          ),
        )
      for (const { file, why } of result.leftOut) terminal.err(`${file}: not used, because ${why}`)
      const plots = new Set(result.stages.map(({ plot }) => plot)).size
      terminal.out(`${counted(plots, 'plot')}; stages: ${siteStages.join(', ')}`)
      if (out !== undefined) terminal.out(shown(`Stages: ${out}`))
    })
}
