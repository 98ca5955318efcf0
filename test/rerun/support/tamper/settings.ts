import type { Marks, Tampering } from './landmarks'

/** Names, settings, properties, print set-up, links. */
export function settings({ summary, figure }: Marks): Tampering[] {
  const workbook = 'xl/workbook.xml'
  const core = 'docProps/core.xml'
  return [
    {
      name: 'a name moved',
      change: (b) =>
        b.edit(
          workbook,
          /(<definedName name="margin_to_target">Working!\$C\$)(\d+)/,
          (_, open = '', row = '0') => `${open}${Number(row) + 1}`,
        ),
    },
    {
      name: 'a name turned into a constant',
      change: (b) =>
        b.edit(workbook, /(<definedName name="air_change_rate_50">)[^<]*/, (_, open = '') => `${open}0.31`),
    },
    {
      name: 'a name removed',
      change: (b) => b.edit(workbook, /<definedName name="leakage_to_seal">.*?<\/definedName>/, ''),
    },
    {
      name: 'a name added',
      change: (b) =>
        b.edit(
          workbook,
          '</definedNames>',
          '<definedName name="official_result">0.31</definedName></definedNames>',
        ),
    },
    {
      name: 'print area',
      change: (b) =>
        b.edit(
          workbook,
          /(<definedName name="_xlnm.Print_Area" localSheetId="0">)[^<]*/,
          (_, open = '') => `${open}Summary!$A$1:$F$20`,
        ),
    },
    {
      name: 'print area removed',
      change: (b) =>
        b.edit(workbook, /<definedName name="_xlnm.Print_Area" localSheetId="0">.*?<\/definedName>/, ''),
    },
    {
      name: 'calculation by hand',
      change: (b) => b.edit(workbook, '<calcPr ', '<calcPr calcMode="manual" '),
    },
    {
      name: 'precision as displayed',
      change: (b) => b.edit(workbook, '<calcPr ', '<calcPr fullPrecision="0" '),
    },
    {
      name: 'iterative calculation',
      change: (b) => b.edit(workbook, '<calcPr ', '<calcPr iterate="1" iterateCount="9" '),
    },
    { name: 'dates from 1904', change: (b) => b.edit(workbook, '<workbookPr ', '<workbookPr date1904="1" ') },
    {
      name: 'a link to another workbook',
      change: (b) => {
        b.set(
          'xl/externalLinks/externalLink1.xml',
          '<externalLink xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"/>',
        )
        b.edit(
          'xl/_rels/workbook.xml.rels',
          '</Relationships>',
          '<Relationship Id="rId88" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/externalLink" Target="externalLinks/externalLink1.xml"/></Relationships>',
        )
        return b.edit(
          workbook,
          '</sheets>',
          '</sheets><externalReferences><externalReference r:id="rId88"/></externalReferences>',
        )
      },
    },
    { name: 'macros', change: (b) => (b.parts['xl/vbaProject.bin'] = new Uint8Array([1, 2, 3])) },
    { name: 'author', change: (b) => b.edit(core, /<dc:creator>[^<]*/, '<dc:creator>Somebody Else') },
    { name: 'title', change: (b) => b.edit(core, /<dc:title>[^<]*/, '<dc:title>Another house') },
    {
      name: 'date of making',
      change: (b) =>
        b.edit(core, /(<dcterms:created[^>]*>)[^<]*/, (_, open = '') => `${open}2020-01-01T12:00:00Z`),
    },
    {
      name: 'date of saving',
      change: (b) =>
        b.edit(core, /(<dcterms:modified[^>]*>)[^<]*/, (_, open = '') => `${open}2020-01-01T12:00:00Z`),
    },
    {
      name: 'saved by',
      change: (b) => b.edit(core, /<cp:lastModifiedBy>[^<]*/, '<cp:lastModifiedBy>Somebody Else'),
    },
    {
      name: 'company',
      change: (b) => b.edit('docProps/app.xml', /<Company>[^<]*/, '<Company>Another Office'),
    },
    {
      name: 'header',
      change: (b) => b.edit(summary, '<oddFooter>', '<oddHeader>APPROVED</oddHeader><oddFooter>'),
    },
    { name: 'footer', change: (b) => b.edit(summary, /<oddFooter>[^<]*/, '<oddFooter>&amp;CAPPROVED') },
    {
      name: 'footer of the first page',
      change: (b) =>
        b.edit(
          summary,
          /<headerFooter>(.*?)<\/headerFooter>/s,
          (_, inner = '') =>
            `<headerFooter differentFirst="1">${inner}<firstFooter>APPROVED</firstFooter></headerFooter>`,
        ),
    },
    {
      name: 'landscape',
      change: (b) => b.edit(summary, 'orientation="portrait"', 'orientation="landscape"'),
    },
    { name: 'paper', change: (b) => b.edit(summary, 'paperSize="9"', 'paperSize="70"') },
    {
      name: 'printed at 10 %',
      change: (b) =>
        b.edit(summary, /<sheetPr>.*?<\/sheetPr>/s, '').edit(summary, 'scale="100"', 'scale="10"'),
    },
    {
      name: 'margins that leave no page',
      change: (b) => b.edit(summary, /<pageMargins left="[^"]*"/, '<pageMargins left="7"'),
    },
    {
      name: 'page breaks',
      change: (b) =>
        b.edit(
          summary,
          '<drawing ',
          '<rowBreaks count="1" manualBreakCount="1"><brk id="10" max="16383" man="1"/></rowBreaks><drawing ',
        ),
    },
    {
      name: 'protection of Record removed',
      change: (b) => b.edit(b.sheet('Record'), /<sheetProtection[^>]*\/>/, ''),
    },
    {
      name: 'a check of what may be typed',
      change: (b) =>
        b.edit(
          summary,
          '<printOptions',
          '<dataValidations count="1"><dataValidation type="list" sqref="A12"><formula1>"MEETS,MISSES"</formula1></dataValidation></dataValidations><printOptions',
        ),
    },
    {
      name: 'a link on a cell',
      change: (b) => {
        const id = b.relate(summary, 'hyperlink', 'https://example.invalid/', true)
        return b.edit(
          summary,
          '<printOptions',
          `<hyperlinks><hyperlink ref="A12" r:id="${id}"/></hyperlinks><printOptions`,
        )
      },
    },
    {
      name: 'a filter in use',
      change: (b) =>
        b.edit(
          b.sheet('Check'),
          /<\/sheetData>/,
          '</sheetData><autoFilter ref="A8:E40"><filterColumn colId="4"><filters><filter val="agrees"/></filters></filterColumn></autoFilter>',
        ),
    },
    {
      name: 'formulas shown in place of results',
      change: (b) => b.edit(summary, '<sheetView ', '<sheetView showFormulas="1" '),
    },
    { name: 'zeros not shown', change: (b) => b.edit(summary, '<sheetView ', '<sheetView showZeros="0" ') },
    {
      name: 'columns from right to left',
      change: (b) => b.edit(summary, '<sheetView ', '<sheetView rightToLeft="1" '),
    },
    {
      name: 'theme colours',
      change: (b) =>
        b.edit('xl/theme/theme1.xml', /(<a:dk1>.*?lastClr=")[0-9A-F]{6}/s, (_, open = '') => `${open}FFFFFF`),
    },
    {
      name: 'theme fonts',
      change: (b) =>
        b.edit('xl/theme/theme1.xml', /<a:latin typeface="[^"]*"/, '<a:latin typeface="Wingdings"'),
    },
    {
      name: 'styles swapped',
      change: (b) =>
        b.edit(
          'xl/styles.xml',
          /(<cellXfs[^>]*>)(<xf\b(?:[^>]*\/>|.*?<\/xf>))(<xf\b(?:[^>]*\/>|.*?<\/xf>))/s,
          (_, open = '', one = '', other = '') => open + other + one,
        ),
    },
    {
      name: 'borders',
      change: (b) =>
        b.edit('xl/styles.xml', /<borders[^>]*>.*?<\/borders>/s, (all) => all.replace(/hair/g, 'thick')),
    },
    {
      name: 'protection of cells',
      change: (b) =>
        b.restyle('Summary', figure.address, (xf) =>
          xf.replace(/\/>$/, '><protection hidden="1"/></xf>').replace('<alignment', '<alignment'),
        ),
    },
    { name: 'a part nobody knows', change: (b) => b.set('xl/hidden/notes.xml', '<notes/>') },
    {
      name: 'a text no cell shows',
      change: (b) => b.edit('xl/sharedStrings.xml', '</sst>', '<si><t>hidden</t></si></sst>'),
    },
    {
      name: 'extension of a sheet',
      change: (b) => b.edit(summary, '</worksheet>', '<extLst><ext uri="{X}"/></extLst></worksheet>'),
    },
  ]
}
