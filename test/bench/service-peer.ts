import { readFileSync } from 'node:fs'
import type { AddressInfo } from 'node:net'
import express from 'express'

// The peer of the service's bench, in a process of its own: express that parses the same JSON and answers a constant.
const answer = readFileSync(process.argv[2] ?? '', 'utf8')
const app = express()
app.post('/v1/evaluations', express.json(), (_request, response) => {
  response.type('json').send(answer)
})
const server = app.listen(0, '127.0.0.1', () => {
  console.log(`draughtbook: http://127.0.0.1:${(server.address() as AddressInfo).port}`)
})
