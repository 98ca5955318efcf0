import type { StepId } from '../../kept/kept-test.js'
import type { Section } from './section.js'
import { sections } from './sections.js'

/** One part of the job, in its order; it can be entered at any point. */
export interface Step {
  readonly id: StepId
  readonly title: string
  readonly sections: readonly Section[]
}

const step = (id: StepId, title: string): Step => ({
  id,
  title,
  sections: sections.filter(({ steps }) => steps.includes(id)),
})

export const STEPS: readonly Step[] = [
  step('before', 'Before'),
  step('site', 'On site'),
  step('result', 'Result'),
]

/** The step and section that ask for a field of the record. */
export function placeOf(path: string): { step: StepId; section: string } | undefined {
  let [best, longest]: [Section | undefined, number] = [undefined, 0]
  for (const section of sections)
    for (const start of section.holds ?? [])
      if (start.length > longest && startsAt(path, start)) [best, longest] = [section, start.length]
  const [first] = best?.steps ?? []
  return best && first && { step: first, section: best.id }
}

const startsAt = (path: string, start: string): boolean =>
  path === start || path.startsWith(`${start}.`) || path.startsWith(`${start}[`)
