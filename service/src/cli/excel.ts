import type { Excel } from '../excel/excel.js'
import { thisMachine } from '../excel/machine.js'
import { defaultSettings } from '../settings/settings.js'
import { type AddCommand, DIFFERENT } from './command.js'
import { UsageError } from './errors.js'
import { whole } from './serve.js'
import type { Terminal } from './terminal.js'

interface Options {
  readonly remove?: true
  readonly yes?: true
  readonly port: number
  readonly library?: string
}

export const addExcel: AddCommand = (command, { terminal, end }) => {
  command
    .option('--remove', 'remove the add-in, its certificate and its files')
    .option('--yes', 'trust the certificate for localhost without asking')
    .option('--port <NUMBER>', 'port of the service', whole, defaultSettings.port)
    .option('--library <FOLDER>', 'the firm’s devices, gauges, layouts and targets')
    .action(async (options: Options) => {
      // Loaded here, so that no other command waits for it.
      const { excelOn } = await import('../excel/set-up.js')
      const excel = excelOn(thisMachine())
      if (!excel)
        throw new UsageError(
          'Excel does not run on this system. Use `draughtbook serve` and open the page in a browser. For Excel on the web, see manifests/README.md',
        )
      if (!options.remove) return end(await installed(excel, options, terminal))
      const { removeFromExcel } = await import('../excel/remove.js')
      const { lines, whole: nothingLeft } = await removeFromExcel(excel)
      for (const line of lines) terminal.err(line)
      if (!nothingLeft) end(DIFFERENT)
    })
}

/** Runs the service with the add-in set up, until it is told to stop. Resolves to the exit code. */
async function installed(excel: Excel, options: Options, terminal: Terminal): Promise<number> {
  const say = (sentence: string) => terminal.err(`draughtbook: ${sentence}`)
  const { PANE, paneIsBuilt } = await import('../running/pane-folder.js')
  if (!paneIsBuilt()) throw new UsageError('the pane is not built: run `npm run build`')
  const obstacle = await excel.obstacle()
  if (obstacle !== undefined) throw new UsageError(obstacle)
  const { NotTrusted, trustedCertificate } = await import('../excel/trusted-certificate.js')
  const certificate = await trustedCertificate(excel, () => agreed(excel, options, terminal)).catch(
    (error: unknown) => {
      if (error instanceof NotTrusted)
        throw new UsageError(`the certificate is not trusted: ${error.message}`)
      throw error
    },
  )
  if (!certificate) {
    say('Excel opens the add-in only with a trusted certificate. Nothing was changed.')
    return DIFFERENT
  }
  const { runService } = await import('../running/run-service.js')
  const { setUpInExcel } = await import('../excel/set-up.js')
  const settings = {
    ...defaultSettings,
    port: options.port,
    library: options.library,
    tlsCertificate: certificate.certificate,
    tlsKey: certificate.key,
    logLevel: 'warn',
  }
  const ended = await runService(settings, terminal, {
    overview: false,
    ready: async (url) => {
      await setUpInExcel(excel, PANE, `https://localhost:${new URL(url).port}`, say)
      say('keep this window open while you work in Excel; Ctrl-C ends the service')
    },
  })
  if ('faults' in ended) throw new UsageError(ended.faults.join('\n'))
  return ended.code
}

async function agreed(excel: Excel, { yes }: Options, terminal: Terminal): Promise<boolean> {
  if (yes) return true
  if (!terminal.agree)
    throw new UsageError(
      'you must agree to the certificate for localhost: run this on a terminal, or with --yes',
    )
  terminal.err(
    'Excel opens add-ins over https only, so the service needs a certificate that this computer trusts.',
  )
  terminal.err(
    `It is valid for localhost only and trusted for your account only. Its key stays in ${excel.folder}.`,
  )
  return terminal.agree('Make this certificate and trust it?')
}
