import { element, escapeXml, valued } from './xml.js'

const INK = '262626'
const SIZES = { chart: 1200, axis: 1000, labels: 900 } // hundredths of a point
const UPRIGHT = -5_400_000 // a quarter turn to the left, in 1/60,000 of a degree

/** `c:title` of a chart or axis; a line break starts a new line; empty text gives no element. */
export function title(text: string, role: 'chart' | 'axis', turned = false): string {
  if (text === '') return ''
  const properties = run('a:rPr', SIZES[role], role === 'chart')
  const paragraphs = text
    .split('\n')
    .map((line) =>
      element(
        'a:p',
        {},
        element('a:r', {}, properties, line === '' ? '<a:t/>' : `<a:t>${escapeXml(line)}</a:t>`),
      ),
    )
  const body = turned ? element('a:bodyPr', { rot: UPRIGHT, vert: 'horz' }) : '<a:bodyPr/>'
  const rich = element('c:rich', {}, body, '<a:lstStyle/>', ...paragraphs)
  return element('c:title', {}, element('c:tx', {}, rich), valued('c:overlay', 0))
}

/** `c:rich` of a label at a point. */
export function richLabel(text: string): string {
  const paragraph = element(
    'a:p',
    {},
    element('a:r', {}, run('a:rPr', SIZES.labels, false), `<a:t>${escapeXml(text)}</a:t>`),
  )
  return element('c:rich', {}, '<a:bodyPr/>', '<a:lstStyle/>', paragraph)
}

/** `c:txPr`: how tick labels, the legend and all other text of a chart look. */
export function labelText(): string {
  const paragraph = element('a:pPr', {}, run('a:defRPr', SIZES.labels, false))
  return element(
    'c:txPr',
    {},
    '<a:bodyPr/>',
    '<a:lstStyle/>',
    `<a:p>${paragraph}<a:endParaRPr lang="en-GB"/></a:p>`,
  )
}

function run(name: string, size: number, bold: boolean): string {
  const fill = element('a:solidFill', {}, valued('a:srgbClr', INK))
  return element(name, { lang: 'en-GB', sz: size, b: bold ? 1 : 0 }, fill)
}
