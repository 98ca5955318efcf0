import { strToU8, zipSync } from 'fflate'

const NAMES = [
  'office="urn:oasis:names:tc:opendocument:xmlns:office:1.0"',
  'table="urn:oasis:names:tc:opendocument:xmlns:table:1.0"',
  'text="urn:oasis:names:tc:opendocument:xmlns:text:1.0"',
  'style="urn:oasis:names:tc:opendocument:xmlns:style:1.0"',
  'number="urn:oasis:names:tc:opendocument:xmlns:datastyle:1.0"',
]
  .map((name) => `xmlns:${name}`)
  .join(' ')

export interface RawSpreadsheet {
  /** What stands inside the one table. */
  rows?: string
  /** What stands beside it. */
  more?: string
  styles?: string
  prolog?: string
  type?: string
  manifest?: string
  names?: string
  parts?: Record<string, Uint8Array>
}

export const MIME_TYPE = 'application/vnd.oasis.opendocument.spreadsheet'

/** The smallest .ods, any part of which can be replaced by something hostile. */
export function rawSpreadsheet(
  {
    rows = '',
    more = '',
    styles = '',
    prolog = '',
    type = MIME_TYPE,
    manifest,
    names = NAMES,
    parts = {},
  }: RawSpreadsheet,
  level: 0 | 1 | 6 | 9 = 6,
): Uint8Array {
  const table = `<table:table table:name="Log">${rows}</table:table>`
  return zipSync(
    {
      mimetype: [strToU8(type), { level: 0 }],
      'content.xml': strToU8(
        `<?xml version="1.0" encoding="UTF-8"?>${prolog}<office:document-content ${names}><office:automatic-styles>${styles}</office:automatic-styles><office:body><office:spreadsheet>${table}${more}</office:spreadsheet></office:body></office:document-content>`,
      ),
      ...(manifest !== undefined && { 'META-INF/manifest.xml': strToU8(manifest) }),
      ...parts,
    },
    { level, mtime: new Date('2026-01-01T00:00:00Z') },
  )
}

export const cell = (value: number | string, attributes = '') =>
  typeof value === 'number'
    ? `<table:table-cell office:value-type="float" office:value="${value}" ${attributes}/>`
    : `<table:table-cell office:value-type="string" ${attributes}><text:p>${value}</text:p></table:table-cell>`
