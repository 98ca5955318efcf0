/** Where a workbook is scrolled to, how large it is shown and which cell is chosen: saving a look at it changes nothing else. */
const VIEW = /<sheetViews>.*?<\/sheetViews>/s
const ATTRIBUTES =
  / (?:zoomScale|zoomScaleNormal|zoomScalePageLayoutView|zoomScaleSheetLayoutView|topLeftCell|tabSelected)="[^"<]*"/g
const SELECTIONS = /<selection(?: (?:pane|activeCell|activeCellId|sqref)="[^"<]*")*\s*\/>/g
const WINDOW = /<bookViews><workbookView(?: \w+="[^"<]*")*\s*\/><\/bookViews>/

/** The rows that `addIssuedRows` puts below the others of sheet Record; nothing else can hide in them. */
const ISSUED =
  /<row r="\d+"><c r="A\d+"(?: s="\d+")? t="inlineStr"><is><t>(?:issued part|signing key|signature \(Ed25519\))<\/t><\/is><\/c><c r="B\d+"(?: s="\d+")? t="inlineStr"><is><t>[^<]*<\/t><\/is><\/c><\/row>/g

/**
 * A part's text in the form that is digested: without the view's place and size, and for sheet Record without the rows that
 * hold the digests themselves. Everything else counts, to the byte.
 */
export function canonicalPart(path: string, text: string, recordPart?: string): string {
  if (path === 'xl/workbook.xml') return text.replace(WINDOW, '')
  if (!/^xl\/worksheets\/[^/]+\.xml$/.test(path)) return text
  const cut = text.indexOf('<sheetData')
  const head = cut < 0 ? text : text.slice(0, cut)
  const rest = text.slice(head.length)
  const view = head.replace(VIEW, (views) =>
    views
      .replace(ATTRIBUTES, '')
      .replace(SELECTIONS, '')
      .replace(/(<sheetView\b[^>]*[^/])><\/sheetView>/g, '$1/>'),
  )
  return view + (path === recordPart ? rest.replace(ISSUED, '') : rest)
}

/** Whether a part is text that is compared in canonical form; pictures are digested as they are. */
export const isTextPart = (path: string): boolean => /\.(xml|rels|vml)$/i.test(path)
