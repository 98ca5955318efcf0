import { useEffect, useState } from 'preact/hooks'

type Choices = readonly (readonly [value: string, label: string])[]

/**
 * Choices that come from the calculation, which is fetched behind the pane.
 * @param ready whether the calculation is there anyway; else the choices are fetched when `ask` is called
 */
export function useChoices(
  load: () => Promise<Choices>,
  ready: boolean,
  atFirst: Choices,
): { choices: Choices; ask: () => void } {
  const [choices, setChoices] = useState(atFirst)
  const [asked, setAsked] = useState(false)
  useEffect(() => {
    if (ready || asked) void load().then(setChoices)
  }, [ready, asked])
  return { choices, ask: () => setAsked(true) }
}
