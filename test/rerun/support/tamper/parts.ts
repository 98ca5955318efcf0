import type { PackageText } from '../package'
import { landmarks } from './landmarks'
import type { HiddenChange } from './unseen'

const workbook = 'xl/workbook.xml'
const rels = 'xl/_rels/workbook.xml.rels'
const R = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships'
const MC = 'xmlns:mc="http://schemas.openxmlformats.org/markup-compatibility/2006"'

/** Parts, relations, names of parts, namespaces and alternatives. */
export function hiddenInParts(book: PackageText): HiddenChange[] {
  const { summary, verdict, figure } = landmarks(book)
  const other = (b: PackageText) => b.text(summary).replaceAll('<v>MEETS', '<v>MISSES')
  const target = summary.replace('xl/', '')
  const sheetId = (b: PackageText) =>
    /<Relationship Id="(rId\d+)"[^>]*Target="worksheets\/sheet1.xml"/.exec(b.text(rels))?.[1] ?? ''
  return [
    {
      name: 'a sheet by a name with a percent sign',
      change: (b) => {
        b.set('xl/worksheets/sheet%31.xml', b.text(summary))
        b.set(summary, other(b))
        return b.edit(rels, `Target="${target}"`, 'Target="worksheets/sheet%31.xml"')
      },
    },
    { name: 'a sheet in capitals beside it', change: (b) => b.set('xl/worksheets/SHEET1.xml', other(b)) },
    {
      name: 'a relation of the same id twice',
      change: (b) => {
        b.set('xl/worksheets/sheet91.xml', other(b))
        return b.edit(
          rels,
          />(<Relationship )/,
          (_: string, o = '') =>
            `><Relationship Id="${sheetId(b)}" Type="${R}/worksheet" Target="worksheets/sheet91.xml"/>${o}`,
        )
      },
    },
    {
      name: 'two relations to styles',
      change: (b) => {
        b.set('xl/styles9.xml', b.text('xl/styles.xml').replaceAll('FF1F2933', 'FFFFFFFF'))
        return b.edit(
          rels,
          '</Relationships>',
          `<Relationship Id="rId97" Type="${R}/styles" Target="styles9.xml"/></Relationships>`,
        )
      },
    },
    {
      name: 'two relations to texts',
      change: (b) => {
        b.set('xl/strings9.xml', b.text('xl/sharedStrings.xml').replace(/m³/g, 'ft³'))
        return b.edit(
          rels,
          '</Relationships>',
          `<Relationship Id="rId97" Type="${R}/sharedStrings" Target="strings9.xml"/></Relationships>`,
        )
      },
    },
    {
      name: 'rows in a namespace that programs pass over',
      change: (b) => {
        const t = b.text(summary)
        const data = /<sheetData>.*<\/sheetData>/s.exec(t)?.[0] ?? ''
        const good = data.replace(/<(\/?)([a-zA-Z])/g, '<$1q:$2')
        return b.set(
          summary,
          t
            .replace('mc:Ignorable="x14ac"', 'mc:Ignorable="x14ac q" xmlns:q="urn:nobody"')
            .replace(data, () => good + data.replaceAll('<v>MEETS', '<v>MISSES')),
        )
      },
    },
    {
      name: 'rows in a passed-over namespace, hiding those shown',
      change: (b) => {
        const t = b.text(summary)
        const data = /<sheetData>.*<\/sheetData>/s.exec(t)?.[0] ?? ''
        const low = data.replace(
          new RegExp(`<row r="${verdict.row}" [^>]*>`),
          `<row r="${verdict.row}" ht="1" customHeight="1">`,
        )
        const good = data
          .replace(/<(\/?)(sheetData|row)/g, '<$1q:$2')
          .replace(/<c .*?<\/c>|<c [^>]*\/>/gs, '')
        return b.set(
          summary,
          t
            .replace('mc:Ignorable="x14ac"', 'mc:Ignorable="x14ac q" xmlns:q="urn:nobody"')
            .replace(data, () => good + low),
        )
      },
    },
    {
      name: 'a font colour in a namespace that programs pass over',
      change: (b) => {
        const i = b.addTo(
          'fonts',
          '<font><b/><sz val="10"/><q:color rgb="FF1F2933" xmlns:q="urn:nobody"/><color rgb="FFFFFFFF"/><name val="Calibri"/></font>',
        )
        b.edit(
          'xl/styles.xml',
          'mc:Ignorable="x14ac x16r2"',
          'mc:Ignorable="x14ac x16r2 q" xmlns:q="urn:nobody"',
        )
        return b.restyle('Summary', figure.address, (xf) => xf.replace(/fontId="\d+"/, `fontId="${i}"`))
      },
    },
    {
      name: 'an alternative under a known name of an unknown namespace',
      change: (b) =>
        b.edit(
          summary,
          /<cols>.*?<\/cols>/s,
          (all) =>
            `<mc:AlternateContent ${MC}><mc:Choice xmlns:x14="urn:nobody" Requires="x14">${all}</mc:Choice><mc:Fallback><cols><col min="1" max="1" width="0.1" customWidth="1"/></cols></mc:Fallback></mc:AlternateContent>`,
        ),
    },
    {
      name: 'an alternative for the rows',
      change: (b) =>
        b.edit(
          summary,
          /<sheetData>.*<\/sheetData>/s,
          (all) =>
            `<mc:AlternateContent ${MC}><mc:Choice Requires="x14ac">${all.replaceAll('<v>MEETS', '<v>MISSES')}</mc:Choice><mc:Fallback>${all}</mc:Fallback></mc:AlternateContent>`,
        ),
    },
    {
      name: 'a cell with two results, the second false',
      change: (b) =>
        b.edit(
          summary,
          new RegExp(`(<c r="${figure.address}"[^>]*><f>[^<]*</f>)(<v>[^<]*</v>)`),
          (_, o = '', v = '') => `${o}${v}<v>0.31</v>`,
        ),
    },
    {
      name: 'a cell with two results, the first false',
      change: (b) =>
        b.edit(
          summary,
          new RegExp(`(<c r="${figure.address}"[^>]*><f>[^<]*</f>)(<v>[^<]*</v>)`),
          (_, o = '', v = '') => `${o}<v>0.31</v>${v}`,
        ),
    },
    {
      name: 'a cell with two formulas',
      change: (b) =>
        b.edit(
          summary,
          new RegExp(`(<c r="${figure.address}"[^>]*>)(<f>[^<]*</f>)`),
          (_, o = '', f = '') => `${o}${f}<f>0.31</f>`,
        ),
    },
    {
      name: 'a formula over a block of cells',
      change: (b) =>
        b.edit(
          summary,
          new RegExp(`(<c r="${figure.address}"[^>]*>)<f>`),
          (_, o = '') => `${o}<f t="array" ref="${figure.address}:${figure.column}${figure.row + 6}">`,
        ),
    },
    {
      name: 'a formula that is a table of trials',
      change: (b) =>
        b.edit(
          summary,
          new RegExp(`(<c r="${figure.address}"[^>]*>)<f>([^<]*)</f>`),
          (_, o = '', f = '') =>
            `${o}<f t="dataTable" ref="${figure.address}:${figure.address}" dt2D="0" dtr="0" r1="A1">${f}</f>`,
        ),
    },
    {
      name: 'a reading of a text beside the text',
      change: (b) => {
        b.edit(
          'xl/sharedStrings.xml',
          /<si><t[^>]*>Method: [^<]*<\/t>/,
          (all) => `${all}<rPh sb="0" eb="4"><t>NOT VALID</t></rPh><phoneticPr fontId="0"/>`,
        )
      },
    },
    {
      name: 'texts of another encoding',
      change: (b) => {
        b.edit('xl/sharedStrings.xml', 'encoding="UTF-8"', 'encoding="ISO-8859-1"')
        return b
      },
    },
    {
      name: 'a name of the workbook twice in other letters',
      change: (b) =>
        b.edit(
          workbook,
          '<definedNames>',
          '<definedNames><definedName name="AIR_CHANGE_RATE_50">0.31</definedName>',
        ),
    },
    {
      name: 'a macro that runs when opened',
      change: (b) =>
        b.edit(
          workbook,
          '<definedNames>',
          '<definedNames><definedName name="_xlnm.Auto_Open" hidden="1" xlm="1">Summary!$A$1</definedName>',
        ),
    },
    {
      name: 'a name hidden among the program’s own',
      change: (b) =>
        b.edit(
          workbook,
          '<definedNames>',
          '<definedNames><definedName name="_xlnm._FilterDatabase" localSheetId="0" hidden="1">Summary!$A$1:$F$2</definedName>',
        ),
      unseen: true,
    },
    {
      name: 'macros under another name',
      change: (b) => {
        b.parts['xl/notes.dat'] = new Uint8Array([1, 2, 3])
        return b.edit(
          rels,
          '</Relationships>',
          '<Relationship Id="rId95" Type="http://schemas.microsoft.com/office/2006/relationships/vbaProject" Target="notes.dat"/></Relationships>',
        )
      },
    },
    {
      name: 'a preview picture of the file',
      change: (b) => {
        b.parts['docProps/thumbnail.jpeg'] = new Uint8Array([255, 216, 255])
        return b.edit(
          '_rels/.rels',
          '</Relationships>',
          '<Relationship Id="rId9" Type="http://schemas.openxmlformats.org/package/2006/relationships/metadata/thumbnail" Target="docProps/thumbnail.jpeg"/></Relationships>',
        )
      },
    },
    {
      name: 'a ribbon of its own',
      change: (b) => {
        b.set(
          'customUI/customUI14.xml',
          '<customUI xmlns="http://schemas.microsoft.com/office/2009/07/customui"/>',
        )
        return b.edit(
          '_rels/.rels',
          '</Relationships>',
          '<Relationship Id="rId9" Type="http://schemas.microsoft.com/office/2007/relationships/ui/extensibility" Target="customUI/customUI14.xml"/></Relationships>',
        )
      },
    },
    {
      name: 'a pane of another program beside the sheets',
      change: (b) => {
        b.set(
          'xl/webextensions/taskpanes.xml',
          '<wetp:taskpanes xmlns:wetp="http://schemas.microsoft.com/office/webextensions/taskpanes/2010/11"/>',
        )
        return b.edit(
          '_rels/.rels',
          '</Relationships>',
          '<Relationship Id="rId9" Type="http://schemas.microsoft.com/office/2011/relationships/webextensiontaskpanes" Target="xl/webextensions/taskpanes.xml"/></Relationships>',
        )
      },
    },
    {
      name: 'base of links',
      change: (b) =>
        b.edit(
          'docProps/app.xml',
          '</Properties>',
          '<HyperlinkBase>https://example.invalid/</HyperlinkBase></Properties>',
        ),
    },
    {
      name: 'version of the document',
      change: (b) =>
        b.edit(
          'docProps/core.xml',
          '</cp:coreProperties>',
          '<cp:version>final, approved</cp:version><dc:identifier>CERT-1</dc:identifier></cp:coreProperties>',
        ),
    },
  ]
}
