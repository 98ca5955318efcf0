import { Office, OfficeEnded } from './office.js'

/** The workbook after LibreOffice has recalculated every formula and saved it again, as .xlsx bytes. */
export function recalculate(workbook: Uint8Array | string): Promise<Uint8Array> {
  return convert(workbook, 'Calc MS Excel 2007 XML')
}

/** The workbook as LibreOffice shows it to a user who has it set never to recalculate: only formulas without a result are worked out. */
export function withoutRecalculation(workbook: Uint8Array): Promise<Uint8Array> {
  return convert(workbook, 'Calc MS Excel 2007 XML', SETTINGS.replace('<value>0</value>', '<value>1</value>'))
}

/** The recalculated workbook printed to PDF. */
export function toPdf(workbook: Uint8Array | string): Promise<Uint8Array> {
  return convert(workbook, 'calc_pdf_Export')
}

/** Settings → the LibreOffice that has them, one for all files that run in this process. */
const offices = new Map<string, Office>()

async function convert(
  workbook: Uint8Array | string,
  filter: string,
  settings = SETTINGS,
): Promise<Uint8Array> {
  const office = officeWith(settings)
  try {
    return await office.convert(workbook, filter)
  } catch (error) {
    if (!(error instanceof OfficeEnded)) throw error
    // It ends when it is idle, perhaps at the very moment the order came. Twice is no chance.
    if (offices.get(settings) === office) offices.delete(settings)
    return officeWith(settings).convert(workbook, filter)
  }
}

function officeWith(settings: string): Office {
  const open = offices.get(settings)
  if (open && !open.ended) return open
  const office = new Office(settings)
  offices.set(settings, office)
  return office
}

const setting = (path: string, name: string, value: string) =>
  `<item oor:path="/org.openoffice.Office.${path}"><prop oor:name="${name}" oor:op="fuse"><value>${value}</value></prop></item>`

// Recalculation mode 0 is "always": without it LibreOffice keeps the stored results of a file that names Excel as
// its writer, and wrong ones would pass. Links to other files stay off.
const SETTINGS = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
${setting('Calc/Formula/Load', 'OOXMLRecalcMode', '0')}
${setting('Calc/Content/Update', 'Link', '1')}
${setting('Common/Security/Scripting', 'BlockUntrustedRefererLinks', 'true')}
</oor:items>
`
