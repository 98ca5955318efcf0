import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { runTool } from './run-tool'

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

// A profile of its own for every call: nothing of the user's is read or changed, and calls cannot meet.
async function convert(
  workbook: Uint8Array | string,
  format: string,
  settings = SETTINGS,
): Promise<Uint8Array> {
  const folder = await mkdtemp(join(tmpdir(), 'recalculation-'))
  try {
    await mkdir(join(folder, 'profile', 'user'), { recursive: true })
    await writeFile(join(folder, 'profile', 'user', 'registrymodifications.xcu'), settings)
    const input = join(folder, 'workbook.xlsx')
    await writeFile(input, typeof workbook === 'string' ? await readFile(workbook) : workbook)
    const output = join(folder, 'output')
    const profile = `-env:UserInstallation=${pathToFileURL(join(folder, 'profile')).href}`
    const quiet = ['--headless', '--norestore', '--nolockcheck', '--nodefault', '--nologo']
    const log = await runTool(
      'soffice',
      [profile, ...quiet, '--convert-to', format, '--outdir', output, input],
      'libreoffice-calc',
    )
    // LibreOffice ends without an error code when it cannot load a file; then there is no output.
    const [name] = await readdir(output).catch(() => [])
    if (!name) throw new Error(`LibreOffice could not load the workbook\n${log}`)
    return new Uint8Array(await readFile(join(output, name)))
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
