import type { PackageText } from './package'
import { looks } from './tamper/cell-looks'
import { conditions } from './tamper/conditional-formats'
import { contents } from './tamper/contents'
import { drawings } from './tamper/drawings'
import { landmarks, type Tampering } from './tamper/landmarks'
import { sizes } from './tamper/rows-and-sheets'
import { settings } from './tamper/settings'

/** Every way to falsify a summary that the re-run must find. */
export const tamperingsOf = (book: PackageText): Tampering[] => {
  const marks = landmarks(book)
  return [
    ...looks(marks),
    ...sizes(marks),
    ...conditions(marks),
    ...drawings(marks),
    ...settings(marks),
    ...contents(marks),
  ]
}
