// Where a workbook is scrolled to, how large it is shown and which cell is chosen: saving a look at it changes nothing else.
const VIEWS = { from: '<sheetViews>', to: '</sheetViews>' } as const
// As pages or not, it is the same sheet. It is shown at 10 to 400 %; 0 stands for what is usual in the views that are not in use.
const ATTRIBUTES =
  / (?:zoomScale="(?:[1-9]\d|[1-3]\d\d|400)"|zoomScale(?:Normal|PageLayoutView|SheetLayoutView)="\d{1,3}"|tabSelected="[^"<]*"|view="(?:normal|pageBreakPreview|pageLayout)")/g
const SELECTIONS = /<selection(?: (?:pane|activeCell|activeCellId|sqref)="[^"<]*")*\s*\/>/g
// A window that is hidden, or shows no tabs, is not as issued.
const WINDOW =
  /<bookViews><workbookView(?: (?:xWindow|yWindow|windowWidth|windowHeight|tabRatio|firstSheet|activeTab|minimized)="[^"<]*")*\s*\/><\/bookViews>/
/** Rows above frozen ones cannot be scrolled to: where such a view begins is not a matter of scrolling. */
const FROZEN = /<pane [^<>]{0,400}?state="frozen/
const SCROLLED = /^topLeftCell="[^"<]*" | topLeftCell="[^"<]*"/g

/** The rows that `addIssuedRows` puts below the others of sheet Record; nothing else can hide in them. */
const ISSUED =
  /<row r="\d+"><c r="A\d+"(?: s="\d+")? t="inlineStr"><is><t>(?:issued part|signing key|signature \(Ed25519\))<\/t><\/is><\/c><c r="B\d+"(?: s="\d+")? t="inlineStr"><is><t>[^<]*<\/t><\/is><\/c><\/row>/g

/** The rows that hold digests and signature, as they are written. */
export const issuedRowsText = (text: string): string => (text.match(ISSUED) ?? []).join('')

/**
 * A part's text in the form that is digested: without the view's place and size, and for sheet Record without the rows that
 * hold the digests themselves. Everything else counts, to the byte.
 */
export function canonicalPart(path: string, text: string, recordPart?: string): string {
  if (path === 'xl/workbook.xml') return text.replace(WINDOW, '')
  if (!hasCanonicalForm(path)) return text
  const cut = text.indexOf('<sheetData')
  const head = cut < 0 ? text : text.slice(0, cut)
  const rest = text.slice(head.length)
  return withoutViews(head) + (path === recordPart ? rest.replace(ISSUED, '') : rest)
}

/** The head of a sheet with its views left where they are, but without place, size and selection. */
function withoutViews(head: string): string {
  const from = head.indexOf(VIEWS.from)
  const to = from < 0 ? -1 : head.indexOf(VIEWS.to, from)
  if (to < 0) return head
  const views = head.slice(from, to).replace(ATTRIBUTES, '').replace(SELECTIONS, '')
  return (
    head.slice(0, from) +
    views
      .split('<sheetView ')
      .map((view) => closedIfEmpty(withoutScroll(view)))
      .join('<sheetView ') +
    head.slice(to)
  )
}

/** One view without where it is scrolled to; with frozen rows or columns, only the part beside them scrolls. */
function withoutScroll(view: string): string {
  const cut = FROZEN.test(view) ? view.indexOf('<pane ') : 0
  return view.slice(0, cut) + view.slice(cut).replace(SCROLLED, '')
}

/** `a="1"></sheetView>` as `a="1"/>`: a view that held a selection only. */
function closedIfEmpty(view: string): string {
  const end = view.indexOf('>')
  if (end < 1 || view[end - 1] === '/' || !view.startsWith('></sheetView>', end)) return view
  return `${view.slice(0, end)}/>${view.slice(end + '></sheetView>'.length)}`
}

/** Whether anything of a part is left out when it is digested. */
export const hasCanonicalForm = (path: string): boolean =>
  path === 'xl/workbook.xml' || /^xl\/worksheets\/[^/]+\.xml$/.test(path)

/** Whether a part is text that is compared in canonical form; pictures are digested as they are. */
export const isTextPart = (path: string): boolean => /\.(xml|rels|vml)$/i.test(path)
