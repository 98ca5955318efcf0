import { openApi } from '../api/openapi.js'
import { type Content, type Operation, problemKinds } from '../api/operation.js'
import { operations } from '../api/operations.js'
import { fieldRows, wholeKind } from './field-rows.js'
import { escaped, page } from './html.js'

/** The API for people to read, from the same data as /openapi.json. */
export function apiPage(): string {
  const { components } = openApi() as { components: { schemas: Record<string, unknown> } }
  const schemas = Object.entries(components.schemas)
  return page(
    'Draughtbook API',
    [
      '<p>JSON in, JSON out. Programs read <a href="/openapi.json">/openapi.json</a> (OpenAPI 3.1). If the service asks for tokens, send <code>Authorization: Bearer TOKEN</code>. The name of a field ends in its unit. Unknown fields are errors.</p>',
      '<h2>Operations</h2>',
      ...operations.map(operationText),
      '<h2>Problems</h2>',
      '<p>Every error is a problem (RFC 9457) with <code>errors</code>: path, cell where there is one, message.</p>',
      '<dl>',
      ...Object.entries(problemKinds).map(
        ([kind, says]) => `<dt id="${kind}"><code>${kind}</code></dt><dd>${escaped(says)}</dd>`,
      ),
      '</dl>',
      '<h2>Fields</h2>',
      ...schemas.map(([name, schema]) => schemaText(name, schema)),
    ].join('\n'),
  )
}

function operationText({ method, path, summary, query, body, answer, open }: Operation): string {
  const parameters = Object.entries(query?.shape ?? {}).map(([name, schema]) =>
    named(name, schema.description),
  )
  return `<h3><span class="verb">${method.toUpperCase()}</span> <code>${escaped(path)}</code></h3>
<p>${escaped(summary)}.${open ? ' Needs no token.' : ''}</p>${listOf('Query', parameters)}${listOf('Parts', partsOf(body))}
<p class="quiet">${body ? `Takes ${contentText(body)}; answers` : 'Answers'} ${answer.status}${answer.content ? `, ${contentText(answer.content)}` : ''}. ${escaped(answer.says)}.</p>`
}

const named = (name: string, says = ''): string => `<code>${escaped(name)}</code>: ${escaped(says)}`

const partsOf = (body: Content | undefined): string[] =>
  body && 'parts' in body ? Object.entries(body.parts ?? {}).map(([name, says]) => named(name, says)) : []

const listOf = (title: string, items: readonly string[]): string =>
  items.length === 0 ? '' : `\n<p>${title}</p>\n<ul>${items.map((item) => `<li>${item}</li>`).join('')}</ul>`

const contentText = (content: Content): string =>
  'schema' in content
    ? `<a href="#${content.schema}">${content.schema}</a>`
    : `<code>${escaped(content.file)}</code>`

function schemaText(name: string, schema: unknown): string {
  const rows = fieldRows(schema)
  if (rows.length === 0) return `<h3 id="${name}">${name}</h3>\n<p>${wholeKind(schema)}</p>`
  const cells = rows.map(
    ({ path, kind, unit, says, required }) =>
      `<tr><td><code>${escaped(path)}</code>${required ? '' : ' <span class="quiet">optional</span>'}</td><td>${kind}</td><td>${escaped(unit)}</td><td>${escaped(says)}</td></tr>`,
  )
  return `<h3 id="${name}">${name}</h3>
<div class="scroll"><table><thead><tr><th scope="col">Field</th><th scope="col">Holds</th><th scope="col">Unit</th><th scope="col">Term</th></tr></thead><tbody>
${cells.join('\n')}
</tbody></table></div>`
}
