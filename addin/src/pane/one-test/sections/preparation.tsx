import { useRows } from '../../form/list-rows.js'
import type { Section, SectionProps } from '../section.js'

const STATES = ['closed', 'sealed', 'filled', 'off', 'open', 'not present']

/** Openings by the method's list, and the cautions to acknowledge before the fan is switched on. */
function Preparation(props: SectionProps) {
  const site = props.state.result?.site
  const openings = useRows('test.openings', props)
  const cautions = useRows('preparation.cautions', props)
  const tester = props.state.entries.fields['test.tester']
  const by = tester && 'text' in tester ? tester.text : ''
  if (!site) return <p class="hint">Choose method and preparation first, under Test.</p>
  const stateOf = (kind: string) => openings.rows.find((row) => row.kind === kind)?.state ?? ''
  const answerOf = (caution: string) => cautions.rows.find((row) => row.caution === caution)?.answer ?? ''
  return (
    <>
      <table class="figures checklist">
        <thead>
          <tr>
            <th scope="col">opening</th>
            <th scope="col">asked</th>
            <th scope="col">state</th>
          </tr>
        </thead>
        <tbody>
          {site.openings.map(({ kind, asked, agrees }) => (
            <tr key={kind} class={agrees === false ? 'departs' : ''}>
              <th scope="row">{kind}</th>
              <td>{asked}</td>
              <td>
                <select
                  aria-label={`State of ${kind}`}
                  value={stateOf(kind)}
                  onChange={(event) => {
                    const state = event.currentTarget.value
                    openings.change((rows) => [
                      ...rows.filter((row) => row.kind !== kind),
                      ...(state === '' ? [] : [{ opening: kind, kind, state }]),
                    ])
                  }}
                >
                  <option value="">–</option>
                  {STATES.map((state) => (
                    <option key={state}>{state}</option>
                  ))}
                </select>
                {agrees === false ? ' departs' : ''}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <h3>Before the fan is switched on</h3>
      {by === '' ? <p class="hint">Enter the tester under Test: each answer carries the name.</p> : null}
      {site.cautions.map(({ caution, text }) => (
        <div class="caution" key={caution}>
          <label>
            <b>{caution}</b>{' '}
            <select
              aria-label={`Answer to ${caution}`}
              value={answerOf(caution)}
              disabled={by === ''}
              onChange={(event) => {
                const answer = event.currentTarget.value
                cautions.change((rows) => [
                  ...rows.filter((row) => row.caution !== caution),
                  ...(answer === '' ? [] : [{ caution, answer, by }]),
                ])
              }}
            >
              <option value="">not acknowledged</option>
              <option>taken care of</option>
              <option>does not apply</option>
            </select>
          </label>
          <p class="hint">{text}</p>
        </div>
      ))}
      <p class="hint">Local codes and licensed practice decide; this list replaces neither.</p>
    </>
  )
}

export const preparationSection: Section = {
  id: 'preparation',
  title: 'Preparation and cautions',
  fold: 'closed',
  summary: ({ result, entries }) => {
    if (!result) return ''
    const { openings, cautions } = result.site
    const departing = openings.filter(({ agrees }) => agrees === false).length
    const open = cautions.length - (entries.lists?.['preparation.cautions'] ?? []).length
    return [
      departing > 0 ? `${departing} depart` : '',
      open > 0 ? `${open} cautions open` : 'cautions answered',
    ]
      .filter(Boolean)
      .join(' · ')
  },
  Body: Preparation,
}
