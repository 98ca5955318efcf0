import type { PackageText } from '../package'
import type { Marks, Tampering } from './landmarks'

const RULE = /<cfRule type="expression" dxfId="(\d+)" priority="(\d+)"><formula>([^<]*)<\/formula><\/cfRule>/

/** Conditional formats. */
export function conditions({ summary, verdict, figure }: Marks): Tampering[] {
  const add = (sqref: string, rule: string) => (b: PackageText) =>
    b.edit(
      summary,
      /(<conditionalFormatting)/,
      (_, open = '') => `<conditionalFormatting sqref="${sqref}">${rule}</conditionalFormatting>${open}`,
    )
  const dxf = (b: PackageText, xml: string) => {
    const count = (b.text('xl/styles.xml').match(/<dxf>/g) ?? []).length
    b.edit('xl/styles.xml', '</dxfs>', `<dxf>${xml}</dxf></dxfs>`)
    return count
  }
  return [
    {
      name: 'conditional formats removed from Summary',
      change: (b) => b.edit(summary, /<conditionalFormatting.*<\/conditionalFormatting>/s, ''),
    },
    {
      name: 'conditional formats removed from Check',
      change: (b) => b.edit(b.sheet('Check'), /<conditionalFormatting.*<\/conditionalFormatting>/s, ''),
    },
    {
      name: 'condition turned round',
      change: (b) => b.edit(summary, RULE, (all) => all.replace('&quot;MEETS&quot;', '&quot;MISSES&quot;')),
    },
    {
      name: 'condition that never holds',
      change: (b) => b.edit(summary, RULE, (all) => all.replace(/<formula>[^<]*/, '<formula>FALSE')),
    },
    {
      name: 'condition with another look',
      change: (b) => b.edit(summary, RULE, (all) => all.replace(/dxfId="0"/, 'dxfId="1"')),
    },
    {
      name: 'condition for another area',
      change: (b) =>
        b.edit(summary, /(<conditionalFormatting sqref=")[^"]*"/, (_, open = '') => `${open}H1:H2"`),
    },
    {
      name: 'colours of the conditions swapped',
      change: (b) =>
        b.edit('xl/styles.xml', /<dxfs[^>]*>.*<\/dxfs>/s, (all) =>
          all.replaceAll('FFDDF3E4', 'FFX').replaceAll('FFFBDCDC', 'FFDDF3E4').replaceAll('FFX', 'FFFBDCDC'),
        ),
    },
    {
      name: 'condition that shows another verdict',
      change: (b) =>
        add(
          verdict.address,
          `<cfRule type="expression" dxfId="${dxf(b, '<numFmt numFmtId="398" formatCode="0;0;0;&quot;MISSES&quot;"/>')}" priority="1"><formula>TRUE</formula></cfRule>`,
        )(b),
    },
    {
      name: 'condition that shows another figure',
      change: (b) =>
        add(
          figure.address,
          `<cfRule type="expression" dxfId="${dxf(b, '<numFmt numFmtId="397" formatCode="&quot;0.21&quot;"/>')}" priority="1"><formula>TRUE</formula></cfRule>`,
        )(b),
    },
    {
      name: 'condition with white text',
      change: (b) =>
        add(
          figure.address,
          `<cfRule type="expression" dxfId="${dxf(b, '<font><color rgb="FFFFFFFF"/></font>')}" priority="1"><formula>TRUE</formula></cfRule>`,
        )(b),
    },
    {
      name: 'bars over a figure',
      change: add(
        figure.address,
        '<cfRule type="dataBar" priority="1"><dataBar><cfvo type="min"/><cfvo type="max"/><color rgb="FF000000"/></dataBar></cfRule>',
      ),
    },
  ]
}
