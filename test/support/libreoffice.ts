import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { runTool } from './run-tool.js'

/** The workbook after LibreOffice has recalculated every formula and saved it again, as .xlsx bytes. */
export function recalculate(workbook: Uint8Array | string): Promise<Uint8Array> {
  return convert(workbook, 'xlsx:Calc MS Excel 2007 XML')
}

/** The workbook as LibreOffice shows it to a user who has it set never to recalculate: only formulas without a result are worked out. */
export function withoutRecalculation(workbook: Uint8Array): Promise<Uint8Array> {
  return convert(
    workbook,
    'xlsx:Calc MS Excel 2007 XML',
    SETTINGS.replace('<value>0</value>', '<value>1</value>'),
  )
}

/** The recalculated workbook printed to PDF. */
export function toPdf(workbook: Uint8Array | string): Promise<Uint8Array> {
  return convert(workbook, 'pdf:calc_pdf_Export')
}

interface Order {
  readonly workbook: Uint8Array | string
  readonly resolve: (bytes: Uint8Array) => void
  readonly reject: (error: unknown) => void
}

/** Most files that one run of LibreOffice converts. */
const TOGETHER = 8
/** Format and settings → what waits to be converted so. */
const waiting = new Map<string, Order[]>()
let running = false

/** LibreOffice takes longer to start than to convert: what tests that run side by side ask for goes to one run of it. */
function convert(workbook: Uint8Array | string, format: string, settings = SETTINGS): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const key = JSON.stringify([format, settings])
    waiting.set(key, [...(waiting.get(key) ?? []), { workbook, resolve, reject }])
    setTimeout(() => void runNext(), 30)
  })
}

async function runNext(): Promise<void> {
  const [next] = waiting
  if (running || !next) return
  running = true
  const [key, orders] = next
  const batch = orders.splice(0, TOGETHER)
  if (orders.length === 0) waiting.delete(key)
  const [format, settings] = JSON.parse(key) as [string, string]
  try {
    await convertAll(batch, format, settings)
  } catch (error) {
    for (const { reject } of batch) reject(error)
  }
  running = false
  await runNext()
}

// A profile of its own for every run: nothing of the user's is read or changed, and runs cannot meet.
async function convertAll(batch: readonly Order[], format: string, settings: string): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), 'recalculation-'))
  try {
    await mkdir(join(folder, 'profile', 'user'), { recursive: true })
    await writeFile(join(folder, 'profile', 'user', 'registrymodifications.xcu'), settings)
    const inputs = batch.map((_, index) => join(folder, `workbook-${index}.xlsx`))
    for (const [index, { workbook }] of batch.entries())
      await writeFile(
        inputs[index] as string,
        typeof workbook === 'string' ? await readFile(workbook) : workbook,
      )
    const output = join(folder, 'output')
    const profile = `-env:UserInstallation=${pathToFileURL(join(folder, 'profile')).href}`
    const quiet = ['--headless', '--norestore', '--nolockcheck', '--nodefault', '--nologo']
    const log = await runTool(
      'soffice',
      [profile, ...quiet, '--convert-to', format, '--outdir', output, ...inputs],
      'libreoffice-calc',
    )
    const written = await readdir(output).catch(() => [])
    for (const [index, { resolve, reject }] of batch.entries()) {
      // LibreOffice ends without an error code when it cannot load a file; then there is no output.
      const name = written.find((one) => one.startsWith(`workbook-${index}.`))
      if (name) resolve(new Uint8Array(await readFile(join(output, name))))
      else reject(new Error(`LibreOffice could not load the workbook\n${log}`))
    }
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}

const setting = (path: string, name: string, value: string) =>
  `<item oor:path="/org.openoffice.Office.${path}"><prop oor:name="${name}" oor:op="fuse"><value>${value}</value></prop></item>`

// Recalculation mode 0 is "always": without it LibreOffice keeps the stored results of a file that names Excel as
// its writer, and wrong ones would pass. Macros and links to other files stay off.
const SETTINGS = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
${setting('Calc/Formula/Load', 'OOXMLRecalcMode', '0')}
${setting('Calc/Content/Update', 'Link', '1')}
${setting('Common/Security/Scripting', 'DisableMacrosExecution', 'true')}
${setting('Common/Security/Scripting', 'BlockUntrustedRefererLinks', 'true')}
</oor:items>
`
