import { cautionAnswers, dayOf } from '@draughtbook/shared-calc'
import { useState } from 'preact/hooks'
import { FieldRow } from '../../form/field-row.js'
import { useRows } from '../../form/list-rows.js'
import type { Section, SectionProps } from '../section.js'

/** Dangers to look for before the fan is switched on: each answered once in a test, with the name and the time. */
function Cautions(props: SectionProps) {
  const { rows, change } = useRows('preparation.cautions', props)
  const [looking, setLooking] = useState(false)
  const { result } = props.state
  const cautions = result?.site.cautions ?? []
  const by = testerOf(props)
  const [typing, setTyping] = useState(false)
  const answer = (caution: string, given: string): void => {
    const now = new Date()
    change((all) => [
      ...all.filter((row) => row.caution !== caution),
      {
        caution,
        answer: given,
        by,
        on: dayOf(now),
        note: `at ${two(now.getHours())}:${two(now.getMinutes())}`,
      },
    ])
  }
  if (!result) return <Named {...props} />
  const [last] = rows.slice(-1)
  if (rows.length >= cautions.length && !looking)
    return (
      <p class="answered">
        All {cautions.length} answered by {last?.by} {last?.note}.{' '}
        <button type="button" class="link" onClick={() => setLooking(true)}>
          Show them again
        </button>
      </p>
    )
  return (
    <>
      {typing || by === '' ? (
        <div onFocusIn={() => setTyping(true)} onFocusOut={() => setTyping(false)}>
          <Named {...props} />
        </div>
      ) : null}
      <ul class="precautions">
        {cautions.map(({ caution, name, text }) => {
          const given = rows.find((row) => row.caution === caution)
          return (
            <li class={given ? 'precaution given' : 'precaution'} key={caution}>
              <div class="precaution-text">
                <b>{name}</b>
                <p class="hint">{text}</p>
              </div>
              {/* biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out beside its text */}
              <div class="answers" role="group" aria-label={`Answer to ${name}`}>
                {cautionAnswers.map((one) => (
                  <button
                    type="button"
                    key={one}
                    aria-pressed={given?.answer === one}
                    disabled={by === ''}
                    onClick={() => answer(caution, one)}
                  >
                    {one}
                  </button>
                ))}
              </div>
            </li>
          )
        })}
      </ul>
      <p class="hint">Local codes and licensed practice decide. This list replaces neither.</p>
    </>
  )
}

/** The list itself comes with the calculation, which is fetched when something was entered. */
function Named(props: SectionProps) {
  return (
    <div class="fields">
      <FieldRow
        {...props}
        field={{ path: 'test.tester', label: 'Tester', kind: 'text', hint: 'saved with each answer' }}
      />
    </div>
  )
}

/** As typed, or as the cell it is taken from holds it. */
function testerOf({ state: { entries, result } }: SectionProps): string {
  const entry = entries.fields['test.tester']
  if (entry && 'text' in entry) return entry.text.trim()
  const tester = (result?.draft.test as { tester?: unknown } | undefined)?.tester
  return typeof tester === 'string' ? tester : ''
}

const two = (value: number): string => String(value).padStart(2, '0')

export const cautionsSection: Section = {
  id: 'cautions',
  title: 'Before the fan is switched on',
  steps: ['site'],
  holds: ['preparation'],
  // With readings there, the fan has run: the list no longer stands in the way.
  fold: ({ result }) => ((result?.site.readings.length ?? 0) > 0 ? 'closed' : 'open'),
  summary: ({ result, entries }) => {
    const all = result?.site.cautions.length ?? 0
    const answered = entries.lists?.['preparation.cautions']?.length ?? 0
    return all === 0 ? '' : answered < all ? `${all - answered} of ${all} to answer` : 'all answered'
  },
  Body: Cautions,
}
