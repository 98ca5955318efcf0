/** The parts of the job, in their order. */
export type StepId = 'before' | 'site' | 'result'

/** What the list of tests shows of one, and what a copy or a file of it takes along. */
export interface TestAbout {
  /** Of the building; '' where none was entered yet. */
  name: string
  /** YYYY-MM-DD, where it was entered. */
  date?: string
  /** Where it stands, in a few words. */
  standing: string
  /** What the entries come to, in the shape of a record; perhaps unfinished. */
  draft?: Readonly<Record<string, unknown>>
  /** The draft is a whole record. */
  whole?: true
  /** The step that was on show. */
  step?: StepId
  /** Air leakage rate at 50 Pa, m³/h, where there is a result. */
  airLeakageRate50_m3_h?: number
}

/** A cell of the log as it was typed on the page; places count from 1. */
export interface CellEdit {
  sheet: string
  row: number
  column: number
  text: string
}

/** One test kept in this browser. Its log and its photos are kept apart, so that a keystroke writes little. */
export interface KeptTest {
  id: string
  /** Everything typed and picked, as JSON. */
  entries: string
  about: TestAbout
  /** When it was last changed, ms since 1970. */
  changed: number
  /** The log it reads from; `size` 0 where the file itself is not kept. `date` is the day the file was last changed. */
  log?: { name: string; size: number; date?: string }
  /** Cells of the log changed on the page, in their order. */
  edits: readonly CellEdit[]
  photos: readonly { name: string; size: number }[]
}

/** Bytes that the test takes up, about. */
export const sizeOf = ({ entries, log, photos }: KeptTest): number =>
  entries.length + (log?.size ?? 0) + photos.reduce((sum, { size }) => sum + size, 0)

/** A test of which nothing is kept yet. */
export const newTest = (entries: string): KeptTest => ({
  id: newId(),
  entries,
  about: { name: '', standing: '' },
  changed: Date.now(),
  edits: [],
  photos: [],
})

/** Random, and to be had on pages without https too. */
function newId(): string {
  return [...crypto.getRandomValues(new Uint8Array(12))]
    .map((byte) => byte.toString(16).padStart(2, '0'))
    .join('')
}
