import { addressOf, withSheet } from '../../log/grid/address.js'
import type { Difference } from '../report.js'
import { compareCharts } from './compare-charts.js'
import type { DrawnObject } from './drawing-look.js'
import { seen } from './seen-difference.js'
import type { SheetLook } from './sheet-look.js'

/** Programs move an edge by a hair when they save; a cell and a half is more than that. */
const MOVED = 1.5

/** Charts, pictures and text boxes: each as issued with what lies where it lay. */
export function compareObjects(issued: SheetLook, now: SheetLook): Difference[] {
  const left = [...now.objects]
  const differences = issued.objects.flatMap((object, i): Difference[] => {
    const same = left.findIndex((one) => one.kind === object.kind && one.content === object.content)
    const place = cellOf(issued.name, object)
    if (same < 0) return [seen('drawing', `${nameOf(object, i)} is missing`, place, object.kind, null)]
    const [found] = left.splice(same, 1)
    return found ? compareObject(issued.name, object, found, place) : []
  })
  return [
    ...differences,
    ...left.map((object) =>
      seen(
        'drawing',
        `a ${object.kind} was added`,
        cellOf(issued.name, object),
        null,
        object.kind === 'picture' ? 'picture' : object.content || object.kind,
      ),
    ),
  ]
}

const cellOf = (sheet: string, { from }: DrawnObject): string =>
  withSheet(sheet, addressOf(Math.floor(from.row), Math.floor(from.column)))

const nameOf = ({ kind }: DrawnObject, index: number): string =>
  index === 0 ? `the ${kind}` : `${kind} ${index + 1}`

function compareObject(sheet: string, issued: DrawnObject, now: DrawnObject, place: string): Difference[] {
  const differences: Difference[] = []
  if (issued.hidden !== now.hidden)
    differences.push(seen('drawing', `the ${issued.kind} is hidden`, place, 'shown', 'hidden'))
  const setting = (label: string, a: string, b: string): void => {
    if (a !== b) differences.push(seen('drawing', `the ${issued.kind}, ${label}`, place, a, b))
  }
  setting('rotated, cropped or recoloured', issued.changed || 'no', now.changed || 'no')
  setting('printed', issued.printed ? 'yes' : 'no', now.printed ? 'yes' : 'no')
  if (now.description !== '') setting('text for screen readers', issued.description, now.description)
  const moved = (['from', 'to'] as const).some(
    (corner) =>
      Math.abs(issued[corner].row - now[corner].row) > MOVED ||
      Math.abs(issued[corner].column - now[corner].column) > MOVED,
  )
  if (moved)
    differences.push(
      seen('drawing', `the ${issued.kind} was moved or resized`, place, areaOf(issued), areaOf(now)),
    )
  if (issued.chart && now.chart) differences.push(...compareCharts(sheet, issued.chart, now.chart, place))
  return differences
}

const areaOf = ({ from, to }: DrawnObject): string =>
  `${addressOf(Math.floor(from.row), Math.floor(from.column))} to ${addressOf(Math.floor(to.row), Math.floor(to.column))}`
