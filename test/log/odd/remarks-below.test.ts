import { expect, it } from 'vitest'
import { book } from '../support/book'
import { closeTo, dep, FORM, HEADINGS, n50Of, pres, read } from './house'

// Truth: a leakage curve written in house.ts and an independent least-squares fit; nothing of it comes from the reader.
const close = closeTo(0.0008)

const blocks = [
  ...FORM,
  [null],
  ['Depressurisation', null, null, 'Pressurisation'],
  ['Zero flow before (Pa)', dep.before, null, 'Zero flow before (Pa)', pres.before],
  ['Zero flow after (Pa)', dep.after, null, 'Zero flow after (Pa)', pres.after],
  [...HEADINGS, null, ...HEADINGS],
  ...dep.readings.map(([pressure, flow], index) => [pressure, flow, null, ...(pres.readings[index] ?? [])]),
]

it('reads two blocks side by side with more lines of remarks than readings right below them', async () => {
  const remarks = Array.from({ length: 40 }, (_, line) => [`remark ${line}`, 'window', 'as found', line % 7])
  const { asked, n50, record } = read(await book({ Test: [...blocks, ...remarks] }))
  expect(asked).toEqual([])
  expect(record?.runs.map(({ zeroFlowAfter_Pa }) => zeroFlowAfter_Pa)).toEqual([[dep.after], [pres.after]])
  close(n50, n50Of([dep, pres]))
})

it('keeps two runs of one flow in opposite directions on two sheets apart', async () => {
  const opposite = dep.readings.map(([pressure, flow]): [number, number] => [-pressure, flow])
  const rows = (title: string, readings: readonly [number, number][]) => [[title], HEADINGS, ...readings]
  const { record } = read(
    await book({
      House: FORM,
      Out: rows('Depressurisation', dep.readings),
      In: rows('Pressurisation', opposite),
    }),
  )
  expect(record?.runs.map(({ direction }) => direction)).toEqual(['depressurisation', 'pressurisation'])
})
