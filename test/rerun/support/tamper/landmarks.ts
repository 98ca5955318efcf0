import type { PackageText } from '../package'

/** One way to falsify a summary; it changes the package it is given. */
export interface Tampering {
  readonly name: string
  readonly change: (book: PackageText) => unknown
}

/** Cells to tamper with, found by what they hold: the pages may be laid out anew. */
export function landmarks(book: PackageText) {
  const summary = book.sheet('Summary')
  const xml = book.text(summary)
  const formulas = [...xml.matchAll(/<c r="([A-Z]+)(\d+)"[^>]*><f>([^<]*)<\/f><v>([^<]*)<\/v><\/c>/g)].map(
    ([, column = '', row = '', formula = '', value = '']) => ({
      address: column + row,
      column,
      row: Number(row),
      formula,
      value,
    }),
  )
  const verdict = formulas.find(({ value }) => value === 'MEETS' || value === 'MISSES')
  const figure = formulas.find(({ value }) => /^0\.\d{6,}$/.test(value))
  if (!verdict || !figure) throw new Error('the summary shows no verdict or no figure')
  const reading = /<c r="([A-Z]+\d+)"[^>]*><v>(-?[56]\d\.\d)<\/v><\/c>/.exec(
    book.text(book.sheet('Readings')),
  )
  if (!reading) throw new Error('no reading')
  return {
    summary,
    verdict,
    figure,
    formulas,
    reading: { address: reading[1] ?? '', value: reading[2] ?? '' },
  }
}

export type Marks = ReturnType<typeof landmarks>
