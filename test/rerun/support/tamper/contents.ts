import type { PackageText } from '../package'
import type { Marks, Tampering } from './landmarks'

/** What cells hold. */
export function contents({ summary, verdict, figure, reading }: Marks): Tampering[] {
  const cell = (address: string, change: (xml: string) => string) => (b: PackageText) =>
    b.edit(summary, new RegExp(`<c r="${address}"[^>]*>.*?</c>`, 's'), (xml) => change(xml))
  return [
    {
      name: 'poisoned result, formula kept: verdict',
      change: cell(verdict.address, (xml) => xml.replace(/<v>[^<]*/, '<v>NOT VALID')),
    },
    {
      name: 'poisoned result, formula kept: figure',
      change: cell(figure.address, (xml) => xml.replace(/<v>[^<]*/, '<v>0.31')),
    },
    {
      name: 'poisoned result in the fourth digit',
      change: cell(figure.address, (xml) => xml.replace(/<v>([^<]*)/, (_, v) => `<v>${Number(v) + 0.0001}`)),
    },
    {
      name: 'formula turned into its own result',
      change: cell(figure.address, (xml) => xml.replace(/<f>.*?<\/f>/, '')),
    },
    {
      name: 'verdict turned into text',
      change: cell(verdict.address, (xml) => xml.replace(/<f>.*?<\/f>/, '')),
    },
    {
      name: 'formula to another cell of the same value',
      change: cell(figure.address, (xml) => xml.replace(/<f>(.*?)<\/f>/, '<f>$1+0</f>')),
    },
    {
      name: 'text in the place of a result',
      change: cell(figure.address, (xml) =>
        xml
          .replace(/ t="\w+"/, '')
          .replace('<c ', '<c t="inlineStr" ')
          .replace(/<f>.*<\/v>/s, '<is><t>0.31</t></is>'),
      ),
    },
    { name: 'number kept as text', change: cell(figure.address, (xml) => xml.replace('<c ', '<c t="str" ')) },
    {
      name: 'an error',
      change: cell(figure.address, (xml) => xml.replace('<c ', '<c t="e" ').replace(/<v>[^<]*/, '<v>#N/A')),
    },
    { name: 'a result emptied', change: cell(figure.address, () => `<c r="${figure.address}"/>`) },
    {
      name: 'white letters in a text',
      change: (b) =>
        b.edit(
          'xl/sharedStrings.xml',
          /<si><t[^>]*>(Method[^<]{4})([^<]*)<\/t><\/si>/,
          (_, a = '', z = '') =>
            `<si><r><rPr><color rgb="FFFFFFFF"/></rPr><t xml:space="preserve">${a}</t></r><r><rPr/><t xml:space="preserve">${z}</t></r></si>`,
        ),
    },
    { name: 'a word of a text', change: (b) => b.edit('xl/sharedStrings.xml', /Method: /, 'Method as ') },
    {
      name: 'a reading typed over',
      change: (b) => b.edit(b.sheet('Readings'), `<v>${reading.value}</v>`, '<v>12.3</v>'),
    },
    {
      name: 'a cell filled beside the table',
      change: (b) =>
        b.edit(summary, '</sheetData>', '<row r="400"><c r="C400"><v>1</v></c></row></sheetData>'),
    },
    {
      name: 'Check made to agree',
      change: (b) => b.edit(b.sheet('Check'), /<f>IF\(IFERROR[^<]*<\/f>/g, '<f>&quot;agrees&quot;</f>'),
    },
    {
      name: 'count of differences fixed at 0',
      change: (b) => b.edit(b.sheet('Check'), /<f>COUNTIF[^<]*<\/f>/, '<f>0</f>'),
    },
    {
      name: 'a digest',
      change: (b) =>
        b.edit(b.sheet('Record'), /(<t>)[0-9a-f]( ?)/, (_, open = '', rest = '') => `${open}z${rest}`),
    },
    {
      name: 'digests removed',
      change: (b) =>
        b.edit(b.sheet('Record'), /<row r="\d+"><c r="A\d+"[^>]*><is><t>issued part.*?<\/row>/gs, ''),
    },
  ]
}
