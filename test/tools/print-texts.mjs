// Prints every finding and every question with the values of its samples, to be read aloud: node test/tools/print-texts.mjs
import { createServer } from 'vite'

const server = await createServer({
  configFile: false,
  server: { middlewareMode: true, ws: false },
  logLevel: 'error',
})
const load = (name) => server.ssrLoadModule(`/test/shared-calc/findings/${name}.ts`)
const { made } = await load('every-message')
const { asked } = await load('every-question')

for (const { id, message, remedy = '' } of made) console.log(`${id}\n    ${message} | ${remedy}`)
for (const { id, text, choices } of asked) {
  console.log(`question ${id}\n    ${text}`)
  for (const { label, reason = '' } of choices)
    console.log(`      • ${label}${reason === '' ? '' : ` — ${reason}`}`)
}
await server.close()
