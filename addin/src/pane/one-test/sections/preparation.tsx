import { openingStates } from '@draughtbook/shared-calc'
import { useRows } from '../../form/list-rows.js'
import type { Section, SectionProps } from '../section.js'

/** Openings by the method's list. */
function Preparation(props: SectionProps) {
  const site = props.state.result?.site
  const openings = useRows('test.openings', props)
  if (!site) return <p class="hint">Choose the method and the preparation above first.</p>
  const stateOf = (kind: string) => openings.rows.find((row) => row.kind === kind)?.state ?? ''
  // What is asked depends on the preparation; until it is chosen, one line says so.
  const chosen = site.openings.some(({ states }) => states.length > 0)
  return (
    <>
      {chosen ? null : (
        <p class="hint">Choose a preparation above to see the state that each opening needs.</p>
      )}
      <table class="figures checklist">
        <thead>
          <tr>
            <th scope="col">opening</th>
            {chosen ? <th scope="col">needed</th> : null}
            <th scope="col">state</th>
          </tr>
        </thead>
        <tbody>
          {site.openings.map(({ kind, asked, agrees }) => (
            <tr key={kind} class={agrees === false ? 'departs' : ''}>
              <th scope="row">{kind}</th>
              {chosen ? <td>{asked}</td> : null}
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
                  {openingStates.map((state) => (
                    <option key={state}>{state}</option>
                  ))}
                </select>
                {agrees === false ? ' departs' : ''}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  )
}

export const preparationSection: Section = {
  id: 'preparation',
  title: 'Openings',
  steps: ['before'],
  holds: ['test.openings'],
  fold: 'closed',
  summary: ({ result, entries }) => {
    if (!result) return ''
    const departing = result.site.openings.filter(({ agrees }) => agrees === false).length
    const logged = entries.lists?.['test.openings']?.length ?? 0
    return [
      `${logged} of ${result.site.openings.length} logged`,
      departing > 0 ? `${departing} not as required` : '',
    ]
      .filter(Boolean)
      .join(' · ')
  },
  Body: Preparation,
}
