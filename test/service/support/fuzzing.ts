import { randomInt } from 'node:crypto'
import { Agent, request } from 'node:http'
import fc from 'fast-check'
import { ProblemBody } from '../../../service/src/http/problem-body'

/** Set FUZZ_SEED to repeat a run. */
export const seed = Number(process.env.FUZZ_SEED ?? randomInt(2 ** 31))
console.log(`fuzz seed ${seed}`)

/** Bodies sent to each route that takes one; the tests count them. */
export const CASES = {
  '/v1/evaluations': 12_000,
  '/v1/library/{kind}/{id}': 3000,
  '/v1/take-offs': 1000,
  '/v1/plans': 1000,
  '/v1/running-estimates': 1000,
  '/v1/leak-reports': 1000,
  '/v1/readings': 1000,
  '/v1/workbooks': 150,
  '/v1/registers': 100,
  '/v1/buildings': 100,
  '/v1/stages': 100,
  '/v1/reruns': 100,
} as const
export type Fuzzed = keyof typeof CASES

/** Bodies of one property run; they go out together. */
export const BATCH = 50
export const batches = (bodies: fc.Arbitrary<string | Uint8Array>) =>
  fc.array(bodies, { minLength: BATCH, maxLength: BATCH, size: 'max' })

export interface Sent {
  body: string | Uint8Array
  status: number
  type: string
  text: string
}

/** Sends bodies to a service over a few kept connections. */
export function sender(base: string) {
  const agent = new Agent({ keepAlive: true, maxSockets: 16 })
  const { hostname, port } = new URL(base)
  const send = (
    method: string,
    path: string,
    body: string | Uint8Array,
    headers: Record<string, string> = {},
  ): Promise<Sent> =>
    new Promise<Sent>((resolve, reject) => {
      const options = { agent, hostname, port, method, path }
      const sent = request(
        { ...options, headers: { 'content-type': 'application/json', ...headers } },
        (answer) => {
          let text = ''
          answer.setEncoding('utf8').on('data', (chunk) => {
            text += chunk
          })
          answer.on('end', () =>
            resolve({
              body,
              status: answer.statusCode ?? 0,
              type: String(answer.headers['content-type']),
              text,
            }),
          )
        },
      )
      sent.on('error', (error: NodeJS.ErrnoException) => {
        // A kept connection may end just as it is used again (RFC 9112, 9.5). On a new one nothing is asked twice.
        if (sent.reusedSocket && error.code === 'ECONNRESET')
          send(method, path, body, headers).then(resolve, reject)
        else reject(error)
      })
      sent.end(body)
    })
  return send
}

/** Either a good answer, or a problem that says what is wrong: nothing in between, and never a fault of ours. */
export function expectOrderly({ body, status, type, text }: Sent, good: (json: unknown) => boolean): void {
  if (status === 200 || status === 201) {
    if (!good(JSON.parse(text))) throw new Error(`a wrong answer for ${body}: ${text.slice(0, 500)}`)
    return
  }
  if (status >= 500 || !type.startsWith('application/problem+json'))
    throw new Error(`${status} for ${body}: ${text.slice(0, 500)}`)
  const problem = ProblemBody.parse(JSON.parse(text))
  if (status === 422 || status === 400)
    if (
      !(problem.errors?.map(({ message }) => message) ?? [problem.detail]).every((why = '') => why.length > 3)
    )
      throw new Error(`no reason given for ${body}: ${text}`)
}

/** Most processor time for a batch: were one body alone to take so long, its batch would. */
const MOST_s = 2

/** Does the work for a batch and throws when it took too much processor time, which other work on the machine does not lengthen. */
export async function inBounds<T>(work: () => Promise<T>): Promise<T> {
  const before = process.cpuUsage()
  const result = await work()
  const { user, system } = process.cpuUsage(before)
  const seconds = (user + system) / 1e6
  if (seconds > MOST_s) throw new Error(`a batch of bodies took ${seconds.toFixed(1)} s of processor time`)
  return result
}
