import { ADD_IN_ID } from '../../service/src/excel/excel.js'

/** Facts of the add-in that both manifests share. The id and the namespace are in users' workbooks: they never change. */
export const definition = {
  id: ADD_IN_ID,
  /** Raised with every change of a manifest, else Excel keeps the old one. */
  version: '1.0.0',
  name: 'Draughtbook',
  provider: 'Draughtbook',
  shortDescription: 'Works out airtightness tests beside your test log.',
  fullDescription:
    'Reads an airtightness test from the open test log, works out air change rate, specific leakage rates and leakage area with every step shown, names what a test standard objects to, and writes a summary workbook that re-derives itself. Spreadsheet functions for the same figures.',
  accentColor: '#0B5D66',
  group: 'Airtightness',
  button: 'Airtightness test',
  buttonTip: 'Opens the pane beside the test log: pick the readings, see the result, write the summary.',
  /** Everything the pane cannot do without; later sets are asked for at run time. */
  requirement: { name: 'ExcelApi', version: '1.9' },
} as const

/** Ribbon icons Excel asks for, px. */
export const RIBBON_SIZES = [16, 20, 24, 32, 40, 48, 64, 80] as const
/** All icons that are drawn: the ribbon's, the dialogs' (128) and the unified manifest's colour icon (192). */
export const ICON_SIZES = [...RIBBON_SIZES, 128, 192] as const

/** The add-in's address, ending in a slash. Throws RangeError for anything but https: Excel loads nothing else. */
export function baseAddress(text: string): URL {
  let base: URL
  try {
    base = new URL(text.endsWith('/') ? text : `${text}/`)
  } catch {
    throw new RangeError(`"${text}" is no address; it must be like https://pane.example/`)
  }
  if (base.protocol !== 'https:')
    throw new RangeError(`${text} is not https: Excel loads add-ins from https only`)
  if (base.search || base.hash) throw new RangeError(`${text} must be a folder, without ? or #`)
  return base
}

export const iconFile = (size: number): string => `icons/draughtbook-${size}.png`
