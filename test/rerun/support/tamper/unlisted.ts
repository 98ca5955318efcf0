import type { PackageText } from '../package'
import { landmarks } from './landmarks'
import type { HiddenChange } from './unseen'

const styles = 'xl/styles.xml'
const workbook = 'xl/workbook.xml'
const drawing = 'xl/drawings/drawing1.xml'
const chart = 'xl/charts/chart1.xml'

type Change = HiddenChange['change']
type Named = readonly [name: string, change: Change]

/** Elements and attributes that no summary has, each in a place where the format lets it stand. */
export function unlisted(book: PackageText): HiddenChange[] {
  const { summary, figure } = landmarks(book)
  const cell = new RegExp(`<c r="${figure.address}"[^>]*>.*?</c>`)
  /** Puts an element behind another of a part. */
  const behind =
    (path: string, end: string, xml: string): Change =>
    (b) =>
      b.edit(path, end, () => end + xml)
  const before =
    (path: string, start: string, xml: string): Change =>
    (b) =>
      b.edit(path, start, () => xml + start)
  const restyled =
    (change: (xf: string) => string): Change =>
    (b) =>
      b.restyle('Summary', figure.address, change)
  const aligned = (attributes: string) =>
    restyled(
      (xf) =>
        `${xf
          .replace(/<alignment[^>]*\/>/, '')
          .replace(/\/>$|<\/xf>$/, '')
          .replace(/([^>])$/, '$1>')}<alignment ${attributes}/></xf>`,
    )
  const fonted =
    (xml: string): Change =>
    (b) => {
      const index = Number(/fontId="(\d+)"/.exec(xfOf(b))?.[1])
      const fonts = /<fonts[^>]*>(.*?)<\/fonts>/s.exec(b.text(styles))?.[1] ?? ''
      const font = fonts.match(/<font>.*?<\/font>|<font\/>/gs)?.[index] ?? '<font></font>'
      const added = b.addTo('fonts', font.replace('</font>', `${xml}</font>`))
      return b.restyle('Summary', figure.address, (xf) => xf.replace(/fontId="\d+"/, `fontId="${added}"`))
    }
  const xfOf = (b: PackageText) => {
    const tag = new RegExp(`<c r="${figure.address}"[^>]*>`).exec(b.text(summary))?.[0] ?? ''
    const block = /<cellXfs[^>]*>(.*?)<\/cellXfs>/s.exec(b.text(styles))?.[1] ?? ''
    return block.match(/<xf\b[^>]*?(?:\/>|>.*?<\/xf>)/gs)?.[Number(/ s="(\d+)"/.exec(tag)?.[1] ?? 0)] ?? ''
  }
  const copied =
    (xml: (cell: string) => string): Change =>
    (b) =>
      b.edit(summary, cell, (found = '') => xml(found))
  const doctored = (found: string) => found.replace(/<f>.*?<\/f>/, '').replace(/<v>.*?<\/v>/, '<v>0.31</v>')

  const looks: Named[] = [
    ['underlined twice', fonted('<u val="doubleAccounting"/>')],
    ['letters as outlines', fonted('<outline/><shadow/>')],
    ['set in italics', fonted('<i/>')],
    ['centred over the next cells', aligned('horizontal="centerContinuous"')],
    ['digits spread over the cell', aligned('horizontal="distributed"')],
    [
      'formula hidden',
      restyled((xf) => xf.replace(/\/>$/, '></xf>').replace('</xf>', '<protection hidden="1"/></xf>')),
    ],
    [
      'blanks behind the number',
      (b) => {
        b.addTo('numFmts', `<numFmt numFmtId="397" formatCode="0.00${'_)'.repeat(20)}"/>`)
        return b.restyle('Summary', figure.address, (xf) => xf.replace(/numFmtId="\d+"/, 'numFmtId="397"'))
      },
    ],
    [
      'thick lines around the figure',
      (b) => {
        const count = (b.text(styles).match(/<border[ >]/g) ?? []).length
        b.edit(styles, '</borders>', '<border><left style="thick"/><right style="thick"/></border></borders>')
        return b.restyle('Summary', figure.address, (xf) =>
          xf.replace(/borderId="\d+"/, `borderId="${count}"`),
        )
      },
    ],
    [
      'a number format twice',
      (b) =>
        b.edit(
          styles,
          /(<numFmt numFmtId="(\d+)"[^>]*>)/,
          (_, all = '', id = '') => `<numFmt numFmtId="${id}" formatCode="&quot;0.31&quot;"/>${all}`,
        ),
    ],
    ['fonts twice', before(styles, '<fills', '<fonts count="1"><font/></fonts>')],
  ]
  const sheets: Named[] = [
    [
      'view of a single user',
      behind(
        summary,
        '</sheetData>',
        '<customSheetViews><customSheetView guid="{00000000-0000-0000-0000-000000000001}" hiddenRows="1"/></customSheetViews>',
      ),
    ],
    [
      'scenarios',
      behind(
        summary,
        '</sheetData>',
        `<scenarios><scenario name="as built" count="1"><inputCells r="${figure.address}" val="0.3"/></scenario></scenarios>`,
      ),
    ],
    [
      'order of sorting',
      behind(summary, '</sheetData>', '<sortState ref="A23:F30"><sortCondition ref="A23:A30"/></sortState>'),
    ],
    [
      'data consolidated',
      behind(
        summary,
        '</sheetData>',
        '<dataConsolidate><dataRefs count="1"><dataRef ref="A1:B2" sheet="Check"/></dataRefs></dataConsolidate>',
      ),
    ],
    [
      'cells watched',
      before(summary, '<pageMargins', `<cellWatches><cellWatch r="${figure.address}"/></cellWatches>`),
    ],
    [
      'rows twice',
      behind(summary, '</sheetData>', '<sheetData><row r="14"><c r="B14"><v>0.31</v></c></row></sheetData>'),
    ],
    [
      'merges twice',
      behind(summary, '</mergeCells>', '<mergeCells count="1"><mergeCell ref="A60:B61"/></mergeCells>'),
    ],
    ['row numbers printed', (b) => b.edit(summary, '<printOptions ', '<printOptions headings="1" ')],
    ['grid lines printed', (b) => b.edit(summary, '<printOptions ', '<printOptions gridLines="1" ')],
    ['errors printed as blanks', (b) => b.edit(summary, '<pageSetup ', '<pageSetup errors="blank" ')],
    ['order of the pages', (b) => b.edit(summary, '<pageSetup ', '<pageSetup pageOrder="overThenDown" ')],
    ['green tab', (b) => b.edit(summary, '<sheetPr>', '<sheetPr><tabColor rgb="FF00B050"/>')],
    ['a comment in XML', copied((found) => found.replace('<v>', '<!-- 0.9 --><v>'))],
  ]
  const cells: Named[] = [
    ['a cell twice, the other one behind', copied((found) => found + doctored(found))],
    ['a cell twice, the other one before', copied((found) => doctored(found) + found)],
    ['two values in a cell', copied((found) => found.replace('</c>', '<v>0.31</v></c>'))],
    ['metadata of a cell', copied((found) => found.replace('<c ', '<c vm="1" '))],
    ['metadata of a formula', copied((found) => found.replace('<c ', '<c cm="1" '))],
    [
      'two texts in one',
      (b) =>
        b.edit(
          'xl/sharedStrings.xml',
          /(<si><t[^>]*>[^<]+<\/t>)<\/si>/,
          (_, text = '') => `${text}<t> (waived)</t></si>`,
        ),
    ],
    [
      'a note in the last cell of the sheet',
      before(
        summary,
        '</sheetData>',
        '<row r="1048576"><c r="XFD1048576" t="inlineStr"><is><t>note</t></is></c></row>',
      ),
    ],
  ]
  const settings: Named[] = [
    [
      'scroll bars hidden',
      before(
        workbook,
        '<sheets>',
        '<bookViews><workbookView showVerticalScroll="0" showHorizontalScroll="0"/></bookViews>',
      ),
    ],
    ['structure protected', before(workbook, '<sheets>', '<workbookProtection lockStructure="1"/>')],
    [
      'read only recommended',
      before(workbook, '<workbookPr', '<fileSharing readOnlyRecommended="1" userName="Auditor"/>'),
    ],
    ['columns named by numbers', (b) => b.edit(workbook, '<calcPr ', '<calcPr refMode="R1C1" ')],
    [
      'a view of the workbook',
      behind(
        workbook,
        '</definedNames>',
        '<customWorkbookViews><customWorkbookView name="Clean" guid="{00000000-0000-0000-0000-000000000001}"/></customWorkbookViews>',
      ),
    ],
    [
      'remark on a name',
      (b) =>
        b.edit(
          workbook,
          '<definedName name="air_change_rate_50"',
          '<definedName name="air_change_rate_50" comment="limit 1.0"',
        ),
    ],
    [
      'a name hidden',
      (b) =>
        b.edit(
          workbook,
          '<definedName name="air_change_rate_50"',
          '<definedName name="air_change_rate_50" hidden="1"',
        ),
    ],
  ]
  const drawings: Named[] = [
    ['chart starts a macro', (b) => b.edit(drawing, 'macro=""', 'macro="[0]!run"')],
    [
      'chart leads elsewhere',
      (b) =>
        b.edit(
          drawing,
          /(<xdr:cNvPr id="2"[^>]*)\/>/,
          (_, head = '') =>
            `${head}><a:hlinkClick xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships" r:id="rId1"/></xdr:cNvPr>`,
        ),
    ],
    ['table below the chart', before(chart, '</c:plotArea>', '<c:dTable><c:showKeys val="1"/></c:dTable>')],
    ['chart seen from the side', before(chart, '<c:plotArea>', '<c:view3D><c:rotX val="90"/></c:view3D>')],
    ['lines to the highest and lowest', before(chart, '</c:scatterChart>', '<c:hiLowLines/>')],
    ['data from another workbook', before(chart, '</c:chartSpace>', '<c:externalData r:id="rId9"/>')],
  ]
  return [...looks, ...sheets, ...cells, ...settings, ...drawings].map(([name, change]) => ({ name, change }))
}
