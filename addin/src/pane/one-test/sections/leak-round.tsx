import { counted, type LeakReport } from '@draughtbook/shared-calc'
import { figure } from '../../figures.js'
import { ListRows, useRows } from '../../form/list-rows.js'
import { PhotoBox } from '../../photo/photo-box.js'
import { ROUND_STOPS, type RoundStop } from '../leak-round.js'
import type { Section, SectionProps } from '../section.js'

const ANSWERS = ['tight', 'leak found', 'not here'] as const

/** A walk through the house while the fan holds it under pressure: each place ticked, what leaks noted and photographed. */
function LeakRound(props: SectionProps) {
  return (
    <>
      <p class="hint">
        Hold the house at about −50 Pa and look for leaks by hand or with smoke before you take readings. Seal
        only what the preparation method allows.
      </p>
      <Sum {...props} />
      <ol class="round">
        {ROUND_STOPS.map((stop) => (
          <Stop key={stop.id} stop={stop} {...props} />
        ))}
      </ol>
    </>
  )
}

/** Leaks found and still open, against what is left to seal. */
function Sum({ state }: SectionProps) {
  const report = state.result?.site.leaks
  const leaks = state.entries.lists?.['leaks.list'] ?? []
  if (leaks.length === 0) return null
  const open = openArea(report)
  const [target] = report?.toSeal ?? []
  return (
    <p class="round-sum" role="status">
      {report ? (
        <>
          {open.area_cm2 === 0 && open.unsized > 0 ? (
            <>
              <b>{counted(open.unsized, 'leak')} found</b>, not fixed and without a size
            </>
          ) : (
            <>
              <b>{figure(open.area_cm2, 2)} cm² found</b>, not fixed
              {open.unsized > 0
                ? `; ${open.unsized} leak${open.unsized === 1 ? ' has' : 's have'} no size yet`
                : ''}
            </>
          )}
          {target
            ? target.hole.area_cm2 > 0
              ? `; ${figure(target.hole.area_cm2, 2)} cm² left to seal to meet the target`
              : '; nothing left to seal: the target is met'
            : ''}
          .
        </>
      ) : (
        <>
          <b>{counted(leaks.length, 'leak')} found.</b> Their sizes are compared with the area left to seal
          once there is a result.
        </>
      )}
    </p>
  )
}

function openArea(report: LeakReport | undefined): { area_cm2: number; unsized: number } {
  const open = (report?.leaks ?? []).filter(({ fixed }) => !fixed)
  return {
    area_cm2: open.reduce((sum, { area_cm2 = 0 }) => sum + area_cm2, 0),
    unsized: open.filter(({ area_cm2 }) => area_cm2 === undefined).length,
  }
}

function Stop({ stop, ...props }: SectionProps & { stop: RoundStop }) {
  const { rows, change } = useRows('site.round', props)
  const leaks = useRows('leaks.list', props)
  const row = rows.find((one) => one.stop === stop.id)
  const put = (part: Record<string, string>): void =>
    change((all) => [...all.filter((one) => one.stop !== stop.id), { ...row, stop: stop.id, ...part }])
  const start = { stop: stop.id, place: stop.place, kind: stop.kind, seenUnder: 'depressurisation' }
  const own = leaks.rows.some((leak) => leak.stop === stop.id)
  const answer = (found: string): void => {
    if (row?.found === found) change((all) => all.filter((one) => one.stop !== stop.id))
    else put({ found })
    if (row?.found !== found && found === 'leak found' && !own)
      leaks.change((all) => [...all, { fixed: 'no', ...start }])
  }
  return (
    <li class="round-stop" data-stop={stop.id} data-found={row?.found}>
      <div class="precaution-text">
        <b>{stop.place}</b>
        <p class="hint">{stop.where}</p>
      </div>
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out beside its text */}
      <div class="answers" role="group" aria-label={`Found at ${stop.place}`}>
        {ANSWERS.map((one) => (
          <button type="button" key={one} aria-pressed={row?.found === one} onClick={() => answer(one)}>
            {one}
          </button>
        ))}
      </div>
      {own ? (
        <div class="round-leaks">
          <ListRows
            {...props}
            list="leaks.list"
            noun="Leak"
            only={{ rows: (leak) => leak.stop === stop.id, start, add: 'Add another leak here' }}
          />
        </div>
      ) : row?.found === 'tight' ? (
        <div class="round-note">
          <label>
            Note
            <input
              type="text"
              value={row.note ?? ''}
              onInput={(event) => put({ note: event.currentTarget.value })}
            />
          </label>
          <PhotoBox
            store={props.store}
            of={stop.place}
            name={row.photo ?? ''}
            start="round"
            onName={(photo) => put({ photo })}
          />
        </div>
      ) : null}
    </li>
  )
}

export const leakRoundSection: Section = {
  id: 'leak-round',
  title: 'Leak round',
  steps: ['site'],
  fold: 'closed',
  summary: ({ entries }) => {
    const done = entries.lists?.['site.round']?.length ?? 0
    const found = entries.lists?.['leaks.list']?.length ?? 0
    return [
      done === 0 ? '' : `${done} of ${ROUND_STOPS.length} places`,
      found === 0 ? '' : counted(found, 'leak'),
    ]
      .filter(Boolean)
      .join(' · ')
  },
  Body: LeakRound,
}
