import { evaluate, formulaList } from '@draughtbook/shared-calc'
import { Validator } from '@seriousme/openapi-schema-validator'
import Ajv from 'ajv/dist/2020.js'
import { describe, expect, it } from 'vitest'
import { openApi } from '../../service/src/api/openapi'
import { operations } from '../../service/src/api/operations'
import { createApp } from '../../service/src/app'
import { badInputs } from './support/bad-input'
import { listen, postJson } from './support/listen'
import { demoRecord } from './support/record'

const description = JSON.parse(JSON.stringify(openApi()))

/** A check of one of the description's schemas, by ajv, with the JSON Schema dialect that OpenAPI 3.1 prescribes. */
function check(name: string): (value: unknown) => boolean {
  // title, unit and the like are annotations of ours.
  const ajv = new Ajv({ strict: false, validateFormats: false })
  ajv.addSchema({ $id: 'api', components: description.components })
  const compiled = ajv.compile({ $ref: `api#/components/schemas/${name}` })
  return (value) => compiled(JSON.parse(JSON.stringify(value)))
}

/** What this file looks at of an operation's description. */
interface Described {
  parameters?: readonly { name: string; in: string; description?: string }[]
  requestBody?: { content: Record<string, { schema?: { properties?: object } }> }
}

describe('/openapi.json', () => {
  it('is valid OpenAPI 3.1', async () => {
    const base = await listen(createApp())
    const served = await (await fetch(`${base}/openapi.json`)).json()
    expect(served).toEqual(description)
    expect(served.openapi).toBe('3.1.0')
    expect(await new Validator().validate(served)).toEqual({ valid: true })
  })

  it('is refused by the same validator when a reference leads nowhere or a field is wrong', async () => {
    expect((await new Validator().validate({ ...description, openapi: '3.1.0', info: {} })).valid).toBe(false)
  })

  it('describes records and evaluations as they are: the demo fits, every changed one does not', () => {
    const record = check('TestRecord')
    expect(record(demoRecord())).toBe(true)
    expect(check('Evaluation')(evaluate(demoRecord(), { trace: true }))).toBe(true)
    expect(check('FormulaList')({ formulas: formulaList() })).toBe(true)
    const bySchema = ['a missing field', 'a negative volume', 'text for a number', 'no run', 'an unknown key']
    const wrong = badInputs.filter(({ what }) => bySchema.includes(what))
    expect(wrong.length).toBe(bySchema.length)
    for (const { body } of wrong) expect(record(JSON.parse(body))).toBe(false)
  })

  it('describes problems as they come', async () => {
    const base = await listen(createApp())
    const problem = check('Problem')
    for (const { body } of badInputs)
      expect(problem(await (await postJson(`${base}/v1/evaluations`, body)).json())).toBe(true)
    expect(problem({ title: 'x' })).toBe(false)
  })

  it('says what each part of a query and of a form means', () => {
    const all = Object.entries<Record<string, Described>>(description.paths).flatMap(([path, methods]) =>
      Object.values(methods).map((one) => ({ path, ...one })),
    )
    const query = all.flatMap(({ path, parameters = [] }) =>
      parameters.filter((one) => one.in === 'query').map((one) => [path, one.name, one.description]),
    )
    expect(query.length).toBeGreaterThan(10)
    expect(query.filter(([, , says]) => !says)).toEqual([])
    const forms = all.filter(({ requestBody }) => requestBody?.content['multipart/form-data'])
    expect(forms.map(({ path }) => path)).toEqual([
      '/v1/registers',
      '/v1/buildings',
      '/v1/stages',
      '/v1/reruns',
    ])
    for (const { requestBody } of forms)
      expect(requestBody?.content['multipart/form-data']?.schema?.properties).toMatchObject({
        files: { type: 'array', description: expect.any(String) },
        layouts: { type: 'array', description: expect.any(String) },
      })
  })

  it.each(operations)('$method $path is there, and answers no other method', async ({ method, path }) => {
    const base = await listen(createApp())
    const address =
      base + path.replace('{kind}', 'devices').replace('{id}', 'x').replace('{version}', '0'.repeat(16))
    const answer = await fetch(address, { method: method.toUpperCase() })
    const body = (await answer.json().catch(() => ({}))) as { title?: string }
    expect(body.title).not.toBe('There is nothing at this address')
    expect(answer.status).not.toBe(405)
    expect((await fetch(address, { method: 'PATCH' })).status).toBeGreaterThanOrEqual(404)
  })
})

describe('the pages', () => {
  it.each(['/api', '/status'])(
    '%s has no script, meets a policy that allows none, and calls nobody',
    async (path) => {
      const base = await listen(createApp())
      const answer = await fetch(base + path)
      const html = await answer.text()
      expect(answer.headers.get('content-security-policy')).toMatch(/^default-src 'none'; style-src 'self';/)
      expect(html).not.toMatch(/<script|javascript:|\son\w+=|style=/i)
      expect(html.match(/(?:src|href)="(?!\/|#)[^"]*"/g)).toBeNull()
      const targets = [...html.matchAll(/href="#([^"]+)"/g)].map(([, id]) => id)
      expect(targets.filter((id) => !html.includes(`id="${id}"`))).toEqual([])
    },
  )
})
