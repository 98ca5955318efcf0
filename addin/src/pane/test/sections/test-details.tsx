import { useEffect, useState } from 'preact/hooks'
import { type Field, testFields } from '../../fields.js'
import { Fields, stillNeeded } from '../../form/fields.js'
import type { Section, SectionProps } from '../section.js'

/** The methods come from the calculation, which is loaded behind the pane: the form shows the one chosen meanwhile. */
function TestDetails(props: SectionProps) {
  const [methods, setMethods] = useState<readonly (readonly [string, string])[]>([
    ['iso-9972:2015', 'ISO 9972:2015'],
  ])
  useEffect(() => {
    void import('../../../calc/choices.js').then(({ methodChoices }) => setMethods(methodChoices()))
  }, [])
  const method: Field = {
    path: 'test.method',
    label: 'Test method',
    kind: 'choice',
    options: methods,
    needed: true,
  }
  return <Fields {...props} fields={[...testFields.slice(0, 1), method, ...testFields.slice(1)]} />
}

export const testDetailsSection: Section = {
  id: 'details',
  title: 'Test',
  fold: 'open',
  summary: ({ entries }) => stillNeeded(testFields, entries),
  Body: TestDetails,
}
