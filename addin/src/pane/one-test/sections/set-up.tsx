import { counted } from '@draughtbook/shared-calc'
import { ListRows } from '../../form/list-rows.js'
import type { Section } from '../section.js'

const SET_UP = { rows: () => true, start: {}, add: 'Add a photo' }

/** How the house and the fan stood when the test was made. */
export const setUpSection: Section = {
  id: 'set-up',
  title: 'Photos of the set-up',
  steps: ['site'],
  fold: 'closed',
  shown: ({ store }) => store.host.photos !== undefined,
  summary: ({ entries }) => {
    const count = entries.lists?.['site.setUp']?.length ?? 0
    return count === 0 ? '' : counted(count, 'photo')
  },
  Body: (props) => (
    <>
      <p class="hint">
        Fan in its opening, gauge and hoses, sealed openings. Place and time are not kept in photos.
      </p>
      <ListRows {...props} list="site.setUp" noun="Set-up" only={SET_UP} />
    </>
  ),
}
