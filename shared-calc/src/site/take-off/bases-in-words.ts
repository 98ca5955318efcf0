import { plain } from '../../catalogue/words.js'
import type { TakeOff } from '../../contract/record/index.js'
import type { PlacedRow } from './rows.js'
import type { WorkedTakeOff } from './work-take-off.js'

/** What the two volumes are, where they differ in this building, and what that does to a result per volume. */
export function basesInWords(takeOff: TakeOff, { spaces, net, overall, bases }: WorkedTakeOff): string[] {
  const words = [
    'Net volume: the air in the rooms, room by room, floor area times mean clear height.',
    'Overall internal volume: everything inside the envelope; internal walls and floors are not subtracted.',
  ]
  if (!bases || !net || !overall) {
    const [counted, missing] = net ? ['net', 'overall internal'] : ['overall internal', 'net']
    words.push(`Only the ${counted} volume was calculated. The ${missing} volume is not known.`)
    return words
  }
  for (const space of takeOff.spaces) {
    if (space.countsIn === 'both') continue
    const { block, row } = spaces.get(space) as PlacedRow
    const volume = block.column('V_i')[row] as number
    const reason = space.reason === undefined ? '' : `: ${space.reason}`
    words.push(
      `"${space.name}" (${plain(Math.abs(volume), 1)} m³) is ${space.use === 'add' ? 'included in' : 'subtracted from'} the ${space.countsIn} volume only${reason}.`,
    )
  }
  const difference = bases.value('d_V')
  const share = (bases.value('r_V') - 1) * 100
  words.push(
    difference === 0
      ? 'Here the two are the same: no space is included in only one of them.'
      : `Here the overall internal volume is ${plain(Math.abs(difference), 1)} m³ ${difference > 0 ? 'larger' : 'smaller'} than the net volume. The same leakage gives an air change rate ${plain(Math.abs(share), 1)} % ${share > 0 ? 'higher' : 'lower'} with the net volume.`,
  )
  return words
}
