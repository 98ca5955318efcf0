import { fileText } from '../../../catalogue/findings/log/file.js'
import { remarkFinding } from '../../../catalogue/findings/remark.js'
import { blockBetween } from '../../grid/address.js'
import type { TestGroup } from './test-group.js'

/** Says which tests of a log were not read, and where they stand. */
export function leftOutTests(groups: readonly TestGroup[], chosen: readonly TestGroup[]) {
  const others = groups.filter((group) => !chosen.includes(group))
  const names = (list: readonly TestGroup[]) => list.map(({ key }) => key)
  const place = (group: TestGroup) =>
    group.runs.map(({ view, top, left, bottom, right }) =>
      blockBetween(view.address(top, left), view.address(bottom, right)),
    )
  const hidden = others.filter((group) => group.hidden)
  const refused = others.filter((group) => !group.hidden && group.refusedBy)
  const shown = others.filter((group) => !group.hidden && !group.refusedBy)
  return [
    ...refused.map((group) =>
      remarkFinding(
        fileText('log-refused-test', { name: group.key, title: group.refusedBy?.title ?? '' }),
        place(group),
      ),
    ),
    ...(hidden.length > 0
      ? [remarkFinding(fileText('log-hidden-test', { names: names(hidden) }), hidden.flatMap(place))]
      : []),
    ...(shown.length > 0
      ? [remarkFinding(fileText('log-other-tests', { names: names(shown) }), shown.flatMap(place))]
      : []),
  ]
}
