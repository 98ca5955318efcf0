import { CALCULATION_VERSION } from '@draughtbook/shared-calc'
import { z } from 'zod'
import type { Content, Operation } from './operation.js'
import { operations } from './operations.js'
import { schemas } from './schemas.js'

type Json = { [key: string]: unknown }

const reference = (name: string) => ({ $ref: `#/components/schemas/${name}` })

/** The API's description, made from the schemas that check the input. Source: OpenAPI 3.1. */
export function openApi(): Json {
  const paths: Record<string, Json> = {}
  for (const operation of operations)
    paths[operation.path] = { ...paths[operation.path], [operation.method]: describe(operation) }
  return {
    openapi: '3.1.0',
    info: {
      title: 'Draughtbook',
      version: CALCULATION_VERSION,
      summary: 'Evaluation of airtightness tests',
      license: { name: 'MIT', identifier: 'MIT' },
    },
    paths,
    components: {
      schemas: componentSchemas(),
      securitySchemes: {
        token: {
          type: 'http',
          scheme: 'bearer',
          description: 'An access token of the service, or of its OpenID Connect issuer',
        },
      },
    },
    // On this machine alone the service may be open; then no token is needed.
    security: [{ token: [] }, {}],
  }
}

function componentSchemas(): Json {
  const registry = z.registry<{ id: string }>()
  for (const [id, schema] of Object.entries(schemas)) registry.add(schema, { id })
  const made = z.toJSONSchema(registry, {
    uri: (id) => `#/components/schemas/${id}`,
    unrepresentable: 'any',
    io: 'input',
  })
  const bare = Object.entries(made.schemas).map(([name, schema]) => {
    const { $id: _id, $schema: _schema, ...rest } = schema as Json
    return [name, rest]
  })
  return Object.fromEntries(bare)
}

function describe(operation: Operation): Json {
  const { summary, open, path, query, headers, body, answer, creates, problems = [] } = operation
  const parameters = [...pathParameters(path), ...queryParameters(query), ...headerParameters(headers)]
  const always = open ? [] : [401, 429, 503]
  const good = { description: answer.says, ...(answer.content && { content: contentOf(answer.content) }) }
  return {
    summary,
    ...(open && { security: [] }),
    ...(parameters.length > 0 && { parameters }),
    ...(body && { requestBody: { required: true, content: contentOf(body) } }),
    responses: {
      [answer.status]: good,
      ...(creates && { 201: good }),
      ...Object.fromEntries([...problems, ...always].map((status) => [status, problemAnswer(status)])),
      default: problemAnswer(500),
    },
  }
}

const contentOf = (content: Content): Json =>
  'schema' in content
    ? {
        'application/json': { schema: reference(content.schema) },
        ...(content.orFile && { [content.orFile]: {} }),
      }
    : { [content.file]: content.parts ? { schema: formSchema(content.parts) } : {} }

/** A form of files: each part may come several times. */
const formSchema = (parts: Readonly<Record<string, string>>): Json => ({
  type: 'object',
  required: ['files'],
  properties: Object.fromEntries(
    Object.entries(parts).map(([name, description]) => [
      name,
      { type: 'array', description, items: { type: 'string', format: 'binary' } },
    ]),
  ),
})

function problemAnswer(status: number): Json {
  if (status === 304) return { description: 'The caller has this version already' }
  return {
    description: 'A problem (RFC 9457)',
    content: { 'application/problem+json': { schema: reference('Problem') } },
  }
}

const pathParameters = (path: string): Json[] =>
  [...path.matchAll(/\{(\w+)\}/g)].map(([, name]) => ({
    name,
    in: 'path',
    required: true,
    schema: { type: 'string' },
  }))

const queryParameters = (query: Operation['query']): Json[] =>
  Object.entries(query?.shape ?? {}).map(([name, schema]) => {
    const { description, ...rest } = withoutDialect(z.toJSONSchema(schema as z.ZodType, { io: 'input' }))
    return {
      name,
      in: 'query',
      required: false,
      ...(description !== undefined && { description }),
      schema: rest,
    }
  })

const headerParameters = (headers: readonly string[] = []): Json[] =>
  headers.map((name) => ({ name, in: 'header', required: false, schema: { type: 'string' } }))

function withoutDialect({ $schema: _schema, ...rest }: Json): Json {
  return rest
}
