import type {
  CountsIn,
  ElementKind,
  EnvelopeElement,
  Space,
  TakeOff,
  VolumeBasis,
} from '../../contract/record/index.js'
import {
  assumed,
  type Block,
  type BlockOf,
  byRule,
  type Calculation,
  type Chapter,
  columnOf,
  fromRecord,
  type Given,
} from '../../engine/index.js'
import { areaTotal, basesCompared, statedCompared, volumeTotal } from '../../formulas/take-off-totals.js'
import { workFigures } from './figures.js'
import type { PlacedRow } from './rows.js'
import { workSolids } from './solids.js'

/** A take-off worked out. Totals to which no part contributes are left out. */
export interface WorkedTakeOff {
  readonly spaces: ReadonlyMap<Space, PlacedRow>
  readonly elements: ReadonlyMap<EnvelopeElement, PlacedRow>
  readonly net?: BlockOf<typeof volumeTotal>
  readonly overall?: BlockOf<typeof volumeTotal>
  readonly bases?: BlockOf<typeof basesCompared>
  readonly floor?: BlockOf<typeof areaTotal>
  readonly envelope?: BlockOf<typeof areaTotal>
  readonly byKind: ReadonlyMap<ElementKind, BlockOf<typeof areaTotal>>
  readonly stated: ReadonlyMap<StatedField, BlockOf<typeof statedCompared>>
}

export type StatedField = 'volume_m3' | 'envelopeArea_m2' | 'floorArea_m2'

const other: Record<VolumeBasis, CountsIn> = { net: 'overall internal', 'overall internal': 'net' }

/** Whether a space counts in a volume. */
export const countsIn = ({ countsIn: where }: Space, basis: VolumeBasis): boolean => where !== other[basis]

/**
 * Works out volumes and areas of a take-off in a calculation.
 * @param at - path of the take-off in the record, for the origins of the cells
 */
export function workTakeOff(calculation: Calculation, takeOff: TakeOff, at = 'takeOff'): WorkedTakeOff {
  const spaces = workSolids(calculation, takeOff, at)
  const elements = workFigures(calculation, takeOff, at)
  const shared: Given =
    takeOff.scaleUncertainty === undefined
      ? assumed(0, 'scale-uncertainty-not-stated')
      : fromRecord(`${at}.scaleUncertainty`, takeOff.scaleUncertainty)

  const total = <T, S extends string>(
    id: string,
    title: string,
    chapter: Chapter<S>,
    size: 'V' | 'A',
    rows: ReadonlyMap<T, PlacedRow>,
    order: readonly T[],
    counts: (part: T) => boolean,
  ): Block<S> | undefined => {
    if (!order.some(counts)) return undefined
    const column = (symbol: string) =>
      columnOf(
        order.map((part) => {
          const { block, row } = rows.get(part) as PlacedRow
          return block.refRow(symbol, row)
        }),
      )
    return calculation.add(`takeOff.${id}`, title, chapter, {
      [`${size}_i`]: column(`${size}_i`),
      [`u_${size}`]: column(`u_${size}`),
      b: columnOf(
        order.map((part) => byRule(counts(part) ? 1 : 0, counts(part) ? 'counts' : 'not included')),
      ),
      r_l: shared,
    })
  }
  const volume = (id: string, title: string, basis: VolumeBasis) =>
    total(id, title, volumeTotal, 'V', spaces, takeOff.spaces, (space) => countsIn(space, basis))
  const net = volume('net', 'Net internal volume', 'net')
  const overall = volume('overall', 'Overall internal volume', 'overall internal')
  const floor = total(
    'floor',
    'Floor area',
    areaTotal,
    'A',
    spaces,
    takeOff.spaces,
    (space) => space.countsAsFloor,
  )
  const order = takeOff.elements ?? []
  const envelope = total('envelope', 'Envelope area', areaTotal, 'A', elements, order, () => true)
  const kinds = [...new Set(order.map(({ kind }) => kind))]
  const byKind = new Map(
    kinds.flatMap((kind): [ElementKind, BlockOf<typeof areaTotal>][] => {
      const block = total(
        `envelope.${kind}`,
        `Envelope area: ${kind}`,
        areaTotal,
        'A',
        elements,
        order,
        (element) => element.kind === kind,
      )
      return block ? [[kind, block]] : []
    }),
  )
  const bases =
    net && overall
      ? calculation.add('takeOff.bases', 'Net and overall internal volume compared', basesCompared, {
          V_n: net.ref('V'),
          V_o: overall.ref('V'),
        })
      : undefined
  return {
    spaces,
    elements,
    ...(net && { net }),
    ...(overall && { overall }),
    ...(bases && { bases }),
    ...(floor && { floor }),
    ...(envelope && { envelope }),
    byKind,
    stated: workStated(calculation, takeOff, at, { net, overall, floor, envelope }),
  }
}

function workStated(
  calculation: Calculation,
  { stated }: TakeOff,
  at: string,
  worked: Readonly<Record<'net' | 'overall' | 'floor' | 'envelope', Block<string> | undefined>>,
): Map<StatedField, BlockOf<typeof statedCompared>> {
  const volume = stated?.volumeBasis === 'overall internal' ? worked.overall : worked.net
  const totals = [
    { field: 'volume_m3', symbol: 'V', block: volume, title: 'internal volume' },
    { field: 'envelopeArea_m2', symbol: 'A_t', block: worked.envelope, title: 'envelope area' },
    { field: 'floorArea_m2', symbol: 'A_t', block: worked.floor, title: 'floor area' },
  ] as const
  return new Map(
    totals.flatMap(({ field, symbol, block, title }): [StatedField, BlockOf<typeof statedCompared>][] => {
      const value = stated?.[field]
      if (value === undefined || !block) return []
      return [
        [
          field,
          calculation.add(`takeOff.stated.${field}`, `Compared with the stated ${title}`, statedCompared, {
            v_w: block.ref(symbol),
            u_w: block.ref('u_t'),
            v_s: fromRecord(`${at}.stated.${field}`, value),
          }),
        ],
      ]
    }),
  )
}
